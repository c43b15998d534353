using EolSequencer.Model.Judging;
using EolSequencer.Model.Ports;
using EolSequencer.Model.Units;
using EolSequencer.Model.Values;
using EolSequencer.Simulators.Physics;
using EolSequencer.Simulators.Randomness;

namespace EolSequencer.Simulators.Instruments;

/// <summary>A sound level meter in front of the vehicle (device kind sound-meter): one result for each measurement.</summary>
internal sealed class SoundMeter(string role, string? instrument, TimeProvider time, Van van, BenchQuirks quirks, ulong seed)
    : SimulatedInstrument(role, instrument, time)
{
    private static readonly Unit Decibel = UnitTable.Required("dB(A)");
    private static readonly Unit Second = UnitTable.Required("s");
    private readonly RandomStream _noise = new(seed, "sound.noise");
    private readonly List<TaskCompletionSource<Reading>> _waiting = [];
    private ITimer? _end;
    private double _highest;

    /// <summary>What it can read.</summary>
    public static IReadOnlyList<string> Channels { get; } = ["level"];

    /// <summary>What it can do.</summary>
    public static IReadOnlyList<string> Actions { get; } = ["start"];

    /// <inheritdoc/>
    public override ValueTask<Reading> IdentifyAsync(CancellationToken cancel) => new(Named("simulated sound meter"));

    /// <inheritdoc/>
    public override async ValueTask<Reading> ReadAsync(ReadRequest request, CancellationToken cancel)
    {
        if (request.Channel.Name != "level") return Refuse(request.Channel.Name);
        var next = new TaskCompletionSource<Reading>();
        _waiting.Add(next);
        using var given = cancel.UnsafeRegister(static (state, token) => ((TaskCompletionSource<Reading>)state!).TrySetCanceled(token), next);
        return await next.Task;
    }

    /// <inheritdoc/>
    public override ValueTask<Reading> ActAsync(ActionRequest request, CancellationToken cancel)
    {
        if (request.Action.Name != "start") return new(Refuse(request.Action.Name));
        if (!request.With.TryGetValue("time", out var value) || value is not NumberValue time || !time.TryIn(Second, out var seconds) || seconds <= 0)
        {
            return new(Reading.None(MissingCause.Refused, Time.GetTimestamp(), $"{Role}: 'start' wants a time above zero"));
        }

        _highest = van.Horn.SoundLevel;
        van.HasChanged += Listen;
        _end?.Dispose();
        _end = Time.CreateTimer(_ => Finish(), null, TimeSpan.FromSeconds((double)seconds), Timeout.InfiniteTimeSpan);
        return new(Reading.Confirmed(Time.GetTimestamp()));
    }

    private void Listen() => _highest = Math.Max(_highest, van.Horn.SoundLevel);

    private void Finish()
    {
        van.HasChanged -= Listen;
        if (quirks.SoundMeterIsSilent) return;
        var reading = Measured(_highest + (Math.Clamp(_noise.Normal(), -3, 3) * 0.2), Decibel, 1);
        var waiting = _waiting.ToArray();
        _waiting.Clear();
        foreach (var next in waiting) next.TrySetResult(reading);
    }
}
