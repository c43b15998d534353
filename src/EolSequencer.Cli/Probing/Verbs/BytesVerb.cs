using System.Globalization;

namespace EolSequencer.Cli.Probing.Verbs;

/// <summary><c>bytes</c>: what goes over the bus.</summary>
/// <param name="isHeard">False: the station's adapters let nobody listen.</param>
internal sealed class BytesVerb(FrameLog frames, ProbeScreen screen, bool isHeard) : IVerb
{
    private const int Usual = 20;

    public string Word => "bytes";

    public IReadOnlyList<(string Form, string Meaning)> Forms =>
    [
        ("bytes [N]", "the last N requests and answers, put together from their frames (20)"),
        ("bytes frames [N]", "the last N frames of any kind"),
        ("bytes on, bytes off", "shows every request and answer as it comes"),
    ];

    public Task RunAsync(string rest, ProbeTurn turn)
    {
        if (!isHeard) throw new ProbeTrouble("the adapters of this station let nobody listen to their bus");
        switch (rest.Split(' ', StringSplitOptions.RemoveEmptyEntries))
        {
            case ["on"]: frames.ShowsMessages = true; break;
            case ["off"]: frames.ShowsMessages = false; break;
            case ["frames"]: Show(frames.Frames(Usual)); break;
            case ["frames", var number]: Show(frames.Frames(Number(number))); break;
            case []: Show(frames.Messages(Usual)); break;
            case [var number]: Show(frames.Messages(Number(number))); break;
            default: throw new ProbeTrouble("write  bytes,  bytes 50,  bytes frames,  bytes on  or  bytes off");
        }

        return Task.CompletedTask;
    }

    private void Show(IEnumerable<string> lines)
    {
        var all = lines.ToList();
        if (all.Count == 0) screen.Write("nothing has gone over the bus yet");
        foreach (var line in all) screen.Write(line);
    }

    private static int Number(string text) =>
        int.TryParse(text, NumberStyles.None, CultureInfo.InvariantCulture, out var number) && number is > 0 and <= FrameLog.Kept
            ? number
            : throw new ProbeTrouble($"'{text}' is no number from 1 to {FrameLog.Kept}");
}
