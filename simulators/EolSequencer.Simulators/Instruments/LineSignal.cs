using EolSequencer.Model.Ports;
using EolSequencer.Model.Values;

namespace EolSequencer.Simulators.Instruments;

/// <summary>The line's control at the station's exit (device kind line-signal): takes over what it is told a moment later.</summary>
internal sealed class LineSignal(string role, string? instrument, TimeProvider time, BenchQuirks quirks) : SimulatedInstrument(role, instrument, time)
{
    private static readonly TimeSpan TakeOver = TimeSpan.FromMilliseconds(350);
    private long _told = long.MaxValue;

    /// <summary>What it can read.</summary>
    public static IReadOnlyList<string> Channels { get; } = ["accepted"];

    /// <summary>What it can do.</summary>
    public static IReadOnlyList<string> Actions { get; } = ["tell"];

    /// <inheritdoc/>
    public override ValueTask<Reading> IdentifyAsync(CancellationToken cancel) => new(Named("simulated line signal"));

    /// <inheritdoc/>
    public override ValueTask<Reading> ReadAsync(ReadRequest request, CancellationToken cancel)
    {
        if (request.Channel.Name != "accepted") return new(Refuse(request.Channel.Name));
        var stamp = Time.GetTimestamp();
        var isAccepted = !quirks.LineIsDeaf && _told != long.MaxValue && Time.GetElapsedTime(_told, stamp) >= TakeOver;
        return new(Reading.Of(isAccepted ? TruthValue.Yes : TruthValue.No, stamp));
    }

    /// <inheritdoc/>
    public override ValueTask<Reading> ActAsync(ActionRequest request, CancellationToken cancel)
    {
        if (request.Action.Name != "tell") return new(Refuse(request.Action.Name));
        _told = Time.GetTimestamp();
        return new(Reading.Confirmed(_told));
    }
}
