using System.Collections.Immutable;
using EolSequencer.Model.Ports;
using EolSequencer.Simulators.Bus;
using EolSequencer.Simulators.ControlUnits;
using EolSequencer.Simulators.Faults;
using EolSequencer.Simulators.Instruments;
using EolSequencer.Simulators.Operators;
using EolSequencer.Simulators.Physics;
using EolSequencer.Simulators.Time;
using EolSequencer.Wire.Can;

namespace EolSequencer.Simulators;

/// <summary>
/// One vehicle of the type orrin on a start-up station: its bus with control units, the person who works on it and the
/// instruments beside it. The same facts, seed and faults give the same behaviour to the last byte.
/// </summary>
public sealed class SimulatedVehicle : IDisposable
{
    /// <summary>Bits per second on its bus.</summary>
    public const int BitRate = 500_000;

    private static readonly BusSpeed Speed = new(BitRate);

    private readonly TimeProvider _time;
    private readonly ISchedule _schedule;
    private readonly ulong _seed;
    private readonly Van _van;
    private readonly SimulatedCanBus _bus;
    private readonly BusPort _tester;
    private readonly BenchQuirks _bench = new();

    /// <summary>A vehicle that stands on the station from this moment on.</summary>
    /// <param name="facts">What its order says.</param>
    /// <param name="time">The clock; a <see cref="VirtualTime"/> is used without timers.</param>
    /// <param name="seed">Fixes all that is left to chance.</param>
    /// <param name="faults">What is wrong with it; those with a time begin then, counted from now.</param>
    /// <exception cref="ArgumentException">The facts are not those of such a vehicle.</exception>
    public SimulatedVehicle(VehicleFacts facts, TimeProvider time, ulong seed, params IEnumerable<InjectedFault> faults)
    {
        var equipment = Equipment.Of(facts.Options);
        (_time, _seed) = (time, seed);
        _schedule = time as ISchedule ?? new ClockSchedule(time);
        _van = new Van(_schedule, equipment, seed);
        _bus = new SimulatedCanBus(_schedule, Speed);
        _tester = _bus.Attach();
        _van.HasChanged += _bus.Wake;

        var habits = new OperatorHabits();
        Operator = new SimulatedOperator(_van, facts, habits, _schedule, seed);
        Network = UnitAssembly.Build(facts, _van, _bus, seed);
        var target = new FaultTarget(_van, Network, _bus, _tester, habits, _bench, _schedule);
        Unsuitable = [.. FaultInjection.Inject(target, faults)];
    }

    /// <summary>Where the tester is plugged in.</summary>
    public ICanPort Port => _tester;

    /// <summary>The person at the station.</summary>
    public IOperator Operator { get; }

    /// <summary>Faults that this vehicle cannot have, because it lacks the part; they were not injected.</summary>
    public ImmutableArray<InjectedFault> Unsuitable { get; }

    /// <summary>Sees every frame on the bus; null: nobody.</summary>
    public IBusObserver? Observer
    {
        get => _bus.Observer;
        set => _bus.Observer = value;
    }

    /// <summary>Frames that the bus has carried so far.</summary>
    public long FramesCarried => _bus.FrameCount;

    /// <summary>The tester's plug, for simulated interfaces.</summary>
    internal BusPort Tester => _tester;

    /// <summary>Hands every frame that others put on the bus to a listener at the tester's plug, each repeat included.</summary>
    internal IDisposable ListenToAll(ICanListener listener) => _bus.ListenToAll(_tester, listener);

    internal UnitNetwork Network { get; }

    internal Van Van => _van;

    /// <summary>What the instruments of such a station can read and do, by what <see cref="CreateCurrentMeter"/> and its like make.</summary>
    public static (IReadOnlyList<string> Channels, IReadOnlyList<string> Actions) CurrentMeterOffer => (CurrentMeter.Channels, CurrentMeter.Actions);

    /// <inheritdoc cref="CurrentMeterOffer"/>
    public static (IReadOnlyList<string> Channels, IReadOnlyList<string> Actions) SoundMeterOffer => (SoundMeter.Channels, SoundMeter.Actions);

    /// <inheritdoc cref="CurrentMeterOffer"/>
    public static (IReadOnlyList<string> Channels, IReadOnlyList<string> Actions) LineSignalOffer => (LineSignal.Channels, LineSignal.Actions);

    /// <summary>A current and voltage meter on this vehicle's supply (device kind dc-meter).</summary>
    /// <param name="role">The role it is bound to.</param>
    /// <param name="instrument">Its identity; null when it has none.</param>
    public IDevice CreateCurrentMeter(string role, string? instrument) => new CurrentMeter(role, instrument, _time, _van, _bench, _seed);

    /// <summary>A sound level meter in front of this vehicle (device kind sound-meter).</summary>
    /// <inheritdoc cref="CreateCurrentMeter"/>
    public IDevice CreateSoundMeter(string role, string? instrument) => new SoundMeter(role, instrument, _time, _van, _bench, _seed);

    /// <summary>The handshake with the line at the station's exit (device kind line-signal).</summary>
    /// <inheritdoc cref="CreateCurrentMeter"/>
    public IDevice CreateLineSignal(string role, string? instrument) => new LineSignal(role, instrument, _time, _bench);

    /// <summary>Nothing happens any more on a clock that is not virtual.</summary>
    public void Dispose() => (_schedule as ClockSchedule)?.Dispose();
}
