using EolSequencer.Model.Judging;
using EolSequencer.Model.Ports;
using EolSequencer.Model.Units;
using EolSequencer.Simulators.Physics;
using EolSequencer.Simulators.Randomness;

namespace EolSequencer.Simulators.Instruments;

/// <summary>A bench meter with clamps in the vehicle's supply lines and inputs at its battery (device kind dc-meter).</summary>
internal sealed class CurrentMeter : SimulatedInstrument
{
    private static readonly TimeSpan CurrentAperture = TimeSpan.FromMilliseconds(20);
    private static readonly TimeSpan VoltageAperture = TimeSpan.FromMilliseconds(6);
    private static readonly TimeSpan ZeroTime = TimeSpan.FromMilliseconds(250);
    private static readonly TimeSpan AnswerLimit = TimeSpan.FromSeconds(1);
    private static readonly Unit Ampere = UnitTable.Required("A");
    private static readonly Unit Volt = UnitTable.Required("V");
    private static readonly Unit Millivolt = UnitTable.Required("mV");

    private readonly Van _van;
    private readonly BenchQuirks _quirks;
    private readonly RandomStream _noise;
    private readonly double _gain;
    private double _zero;

    public CurrentMeter(string role, string? instrument, TimeProvider time, Van van, BenchQuirks quirks, ulong seed)
        : base(role, instrument, time)
    {
        (_van, _quirks) = (van, quirks);
        _noise = new RandomStream(seed, "meter.noise");
        var calibration = new RandomStream(seed, "meter.calibration");
        _zero = calibration.Between(0.02, 0.06);
        _gain = calibration.Between(0.996, 1.004);
    }

    /// <summary>What it can read.</summary>
    public static IReadOnlyList<string> Channels { get; } =
        ["battery_voltage", "battery_ripple", "ground_drop", "lamp_current", "horn_current", "blower_current", "heater_current"];

    /// <summary>What it can do.</summary>
    public static IReadOnlyList<string> Actions { get; } = ["zero"];

    /// <inheritdoc/>
    public override async ValueTask<Reading> IdentifyAsync(CancellationToken cancel) =>
        _quirks.MeterIsSilent ? await SilentAsync(cancel) : Named("simulated meter");

    /// <inheritdoc/>
    public override async ValueTask<Reading> ReadAsync(ReadRequest request, CancellationToken cancel)
    {
        var isVoltage = request.Channel.Name is "battery_voltage" or "battery_ripple" or "ground_drop";
        if (_quirks.MeterIsSilent) return await SilentAsync(cancel);
        await Task.Delay(isVoltage ? VoltageAperture : CurrentAperture, Time, cancel);
        if (_quirks.MeterIsOverloaded) return Reading.None(MissingCause.Overload, Time.GetTimestamp(), $"{Role}: 9.9E37 (over range)");
        var now = _van.Now;
        return request.Channel.Name switch
        {
            "battery_voltage" => Measured(_van.PowerNet.Voltage(now) + Noise(0.003), Volt, 3),
            "battery_ripple" => Measured(Math.Abs(_van.PowerNet.RippleAt(now) + Noise(0.004)), Volt, 3),
            "ground_drop" => Measured(_van.PowerNet.GroundDrop(now) + Noise(0.3), Millivolt, 1),
            "lamp_current" => Current(_van.Lamps.SupplyCurrent(now)),
            "horn_current" => Current(_van.Horn.Current),
            "blower_current" => Current(_van.Climate.BlowerCurrent(now)),
            "heater_current" => Current(_van.Climate.HeaterCurrent),
            _ => Refuse(request.Channel.Name),
        };
    }

    /// <inheritdoc/>
    public override async ValueTask<Reading> ActAsync(ActionRequest request, CancellationToken cancel)
    {
        if (request.Action.Name != "zero") return Refuse(request.Action.Name);
        await Task.Delay(ZeroTime, Time, cancel);
        if (_quirks.MeterIsSilent) return Reading.None(MissingCause.Silent, Time.GetTimestamp(), $"{Role}: no answer");
        if (_quirks.MeterDoesNotZero) return Reading.None(MissingCause.Refused, Time.GetTimestamp(), $"{Role}: -200 \"Execution error\"");
        _zero = 0;
        return Reading.Confirmed(Time.GetTimestamp());
    }

    private async ValueTask<Reading> SilentAsync(CancellationToken cancel)
    {
        await Task.Delay(AnswerLimit, Time, cancel);
        return Reading.None(MissingCause.Silent, Time.GetTimestamp(), $"{Role}: no answer within {AnswerLimit.TotalMilliseconds:0} ms");
    }

    // A clamp keeps a little magnetism until it is zeroed.
    private Reading Current(double amps) => Measured((amps * _gain) + _zero + _quirks.MeterOffset + Noise(0.006), Ampere, 3);

    private double Noise(double deviation) => Math.Clamp(_noise.Normal(), -3, 3) * deviation;
}
