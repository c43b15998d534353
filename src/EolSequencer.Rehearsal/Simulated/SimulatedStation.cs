using System.Collections.Immutable;
using EolSequencer.Devices.Adapters;
using EolSequencer.Model.Events;
using EolSequencer.Model.Plants;
using EolSequencer.Model.Ports;
using EolSequencer.Model.Sequences;
using EolSequencer.Model.Vehicles;
using EolSequencer.Simulators;
using EolSequencer.Simulators.Bus;
using EolSequencer.Simulators.Faults;
using EolSequencer.Station.Fitness;

namespace EolSequencer.Rehearsal.Simulated;

/// <summary>A simulated vehicle with the adapters and the person that belong to it; one for each run.</summary>
public sealed class SimulatedStation : IDisposable
{
    private readonly SimulatedVehicle _vehicle;

    /// <param name="time">The clock of the run: virtual, or real on the run's thread.</param>
    /// <param name="seed">Fixes all that is left to chance.</param>
    public SimulatedStation(Order order, TimeProvider time, ulong seed, IEnumerable<InjectedFault> faults)
    {
        _vehicle = new SimulatedVehicle(VehicleFacts.Of(order), time, seed, faults);
        Adapters = new AdapterRegistry(
            new BusAdapter(_vehicle),
            new InstrumentAdapter("simulated-meter", "a bench meter on a simulated vehicle", SimulatedVehicle.CurrentMeterOffer, (role, instrument, _) => _vehicle.CreateCurrentMeter(role, instrument)),
            new InstrumentAdapter("simulated-sound-meter", "a sound level meter before a simulated vehicle", SimulatedVehicle.SoundMeterOffer, (role, instrument, _) => _vehicle.CreateSoundMeter(role, instrument)),
            new InstrumentAdapter("simulated-line-signal", "the handshake with a simulated line", SimulatedVehicle.LineSignalOffer, (role, instrument, _) => _vehicle.CreateLineSignal(role, instrument)));
    }

    /// <summary>The adapters that a station file may name for it.</summary>
    public AdapterRegistry Adapters { get; }

    /// <summary>The person at the station.</summary>
    public IOperator Operator => _vehicle.Operator;

    /// <summary>Faults that this vehicle cannot have; they were not put in.</summary>
    public ImmutableArray<InjectedFault> Unsuitable => _vehicle.Unsuitable;

    /// <summary>Frames that the bus has carried so far.</summary>
    public long FramesCarried => _vehicle.FramesCarried;

    /// <summary>Sees every frame on the bus; null: nobody.</summary>
    public IBusObserver? Observer
    {
        get => _vehicle.Observer;
        set => _vehicle.Observer = value;
    }

    /// <summary>True when a station file binds any role to a simulator.</summary>
    public static bool Serves(StationFile station) =>
        station.Devices.Any(device => device.Adapter.Adapter.StartsWith("simulated-", StringComparison.Ordinal));

    /// <summary>What a run of a sequence counts for at a station.</summary>
    public static RunMode ModeOf(StationFile station, CheckedSequence sequence) => Serves(station) ? RunMode.Rehearsal : ShiftCheck.ModeOf(station, sequence);

    public void Dispose() => _vehicle.Dispose();
}
