using System.Globalization;
using EolSequencer.Model.Ports;
using EolSequencer.Model.Values;
using EolSequencer.Model.Waiting;

namespace EolSequencer.Cli.Probing.Verbs;

/// <summary><c>watch</c>: channels as they change.</summary>
/// <param name="lines">What is typed; a line ends a watch that has no other end.</param>
/// <param name="isReal">False: virtual time, in which nobody can type meanwhile.</param>
internal sealed class WatchVerb(ProbeBench bench, ProbeScreen screen, TypedLines lines, bool isReal) : IVerb
{
    private static readonly TimeSpan UsualEvery = TimeSpan.FromMilliseconds(100);
    private static readonly TimeSpan UsualUntyped = TimeSpan.FromSeconds(10);
    private static readonly TimeSpan LongestInVirtualTime = TimeSpan.FromMinutes(10);
    private static readonly TimeSpan Longest = TimeSpan.FromHours(12);
    private const int Most = 100_000;

    public string Word => "watch";

    public IReadOnlyList<(string Form, string Meaning)> Forms =>
    [
        ("watch CHANNEL …", "as they change, until a line is typed; for 10 s in virtual time or from a pipe"),
        ("watch CHANNEL … for 5 s", "for so long"),
        ("watch CHANNEL … 10 times", "until so many lines have been shown, in virtual time for 10 min at most"),
    ];

    public async Task RunAsync(string rest, ProbeTurn turn)
    {
        var (names, limit, times) = Parse([.. rest.Split(' ', StringSplitOptions.RemoveEmptyEntries)]);
        if (names.Count == 0) throw new ProbeTrouble("write  watch CHANNEL …, such as  watch bus.ignition for 5 s");
        var channels = names.Select(bench.Channel).ToList();
        using var end = CancellationTokenSource.CreateLinkedTokenSource(turn.Stopping);
        var left = times ?? Most;
        var begun = bench.Time.GetTimestamp();
        var open = new List<IDisposable>();
        var endsByLine = isReal && lines.IsTyped && limit is null && times is null;
        var isEndedByLine = false;
        if (endsByLine) lines.Arrived = EndByLine;
        try
        {
            foreach (var (found, index) in channels.SelectMany(found => found.Indexes.Select(index => (found, index))))
            {
                var listener = new Changes((in Reading reading) => Show(found.NameOf(index), reading));
                open.Add(bench.Device(found.Role).Watch(new ReadRequest(found.Channel, index, begun), found.Channel.Every ?? UsualEvery, listener));
            }

            await Pause.ForAsync(limit ?? (times is not null && !isReal ? LongestInVirtualTime : times is not null || endsByLine ? Longest : UsualUntyped), bench.Time, end.Token);
        }
        catch (OperationCanceledException) when (end.IsCancellationRequested)
        {
            // The end that was wanted.
        }
        finally
        {
            lines.Arrived = null;
            foreach (var watch in open) watch.Dispose();
        }

        screen.Write(string.Create(CultureInfo.InvariantCulture, $"watched for {bench.Time.GetElapsedTime(begun).TotalSeconds:0.###} s"));
        // The line that ended it has done its work.
        if (isEndedByLine) await lines.NextAsync(turn.Asked);

        void EndByLine()
        {
            isEndedByLine = true;
            end.Cancel();
        }

        void Show(string name, in Reading reading)
        {
            if (left <= 0) return;
            screen.Write(string.Create(CultureInfo.InvariantCulture, $"{bench.Time.GetElapsedTime(begun, reading.Stamp).TotalSeconds,9:0.000} s  {name} = {ReadingText.Short(reading)}"));
            if (--left == 0 || turn.Asked.IsCancellationRequested) end.Cancel();
        }
    }

    private static (List<string> Names, TimeSpan? Limit, int? Times) Parse(List<string> words)
    {
        if (words is [.. var watched, "for", var number, var unit])
        {
            var time = (NumberValue)ActionValue.Parse($"{number} {unit}", ValueShape.Time);
            return time.Number is > 0 and <= 43_200 ? (watched, TimeSpan.FromSeconds((double)time.Number), null) : throw new ProbeTrouble("watch for more than nothing and at most 12 h");
        }

        if (words is not [.. var counted, var text, "times"]) return (words, null, null);
        return int.TryParse(text, NumberStyles.None, CultureInfo.InvariantCulture, out var times) && times is > 0 and <= Most
            ? (counted, null, times)
            : throw new ProbeTrouble($"'{text}' is no number of times from 1 to {Most}");
    }

    /// <summary>Hands on a reading when it says something else than the one before.</summary>
    private sealed class Changes(Changes.Shown show) : IReadingListener
    {
        private string? _last;

        public delegate void Shown(in Reading reading);

        public void Received(in Reading reading)
        {
            var text = ReadingText.Short(reading);
            if (text == _last) return;
            _last = text;
            show(reading);
        }
    }
}
