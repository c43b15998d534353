using EolSequencer.Model.Ports;

namespace EolSequencer.Cli.Probing.Verbs;

/// <summary><c>read</c>: one reading of channels, now.</summary>
internal sealed class ReadVerb(ProbeBench bench, ProbeScreen screen) : IVerb
{
    /// <summary>How long the next result of an instrument is waited for.</summary>
    public static readonly TimeSpan EventWithin = TimeSpan.FromSeconds(10);

    public string Word => "read";

    public IReadOnlyList<(string Form, string Meaning)> Forms => [("read CHANNEL …", "one reading each, with its bytes; without an index every value")];

    public async Task RunAsync(string rest, ProbeTurn turn)
    {
        var names = rest.Split(' ', StringSplitOptions.RemoveEmptyEntries);
        if (names.Length == 0) throw new ProbeTrouble("write  read CHANNEL, such as  read bus.ignition; 'list' shows all");
        foreach (var found in names.Select(bench.Channel).ToList())
        {
            if (found.Indexes.IsEmpty) screen.Write($"{found.NameOf(null)}: this vehicle has none of its values");
            foreach (var index in found.Indexes) screen.Write($"{found.NameOf(index)} = {ReadingText.Of(await OneAsync(bench, found, index, turn))}");
        }
    }

    /// <summary>One reading of one value.</summary>
    /// <exception cref="ProbeTrouble">An instrument whose results come once gave none.</exception>
    public static async Task<Reading> OneAsync(ProbeBench bench, ChannelFound found, string? index, ProbeTurn turn)
    {
        var request = new ReadRequest(found.Channel, index, bench.Time.GetTimestamp());
        if (!found.Channel.IsEvent) return await bench.Device(found.Role).ReadAsync(request, turn.Stopping);
        using var limit = new CancellationTokenSource(EventWithin, bench.Time);
        using var both = CancellationTokenSource.CreateLinkedTokenSource(limit.Token, turn.Stopping);
        try
        {
            return await bench.Device(found.Role).ReadAsync(request, both.Token);
        }
        catch (OperationCanceledException) when (limit.IsCancellationRequested)
        {
            throw new ProbeTrouble($"{found.NameOf(index)}: no result came within {EventWithin.TotalSeconds:0} s; its results come once, when something is measured");
        }
    }
}
