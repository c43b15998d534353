using EolSequencer.Devices.Diagnostics;
using EolSequencer.Model.Devices;
using EolSequencer.Model.Judging;
using EolSequencer.Model.Ports;
using EolSequencer.Model.Vehicles;
using EolSequencer.Wire.Can;
using EolSequencer.Wire.Uds;

namespace EolSequencer.Devices.VehicleBus;

/// <summary>
/// The bus of one vehicle, as its vehicle type describes it: identifiers, OBD parameters, broadcast signals and
/// services over a CAN port, real or simulated.
/// </summary>
public sealed class VehicleBusDevice : IDevice
{
    private readonly ICanPort _port;
    private readonly TimeProvider _time;
    private readonly UnitDirectory _units;
    private readonly SessionKeeper _sessions;
    private readonly UnitActions _actions;
    private readonly RecordReader _records;
    private readonly ServiceReader _services;
    private readonly ObdReader _obd;
    private readonly BroadcastReader _broadcasts;

    /// <param name="fitted">The control units that this vehicle has.</param>
    /// <param name="keys">Opens security levels; null: none can be opened.</param>
    public VehicleBusDevice(
        string role, ICanPort port, TimeProvider time, IReadOnlyList<ControlUnit> fitted, IKeyAlgorithm? keys = null, DiagnosticTiming? timing = null)
    {
        (Role, _port, _time) = (role, port, time);
        timing ??= new DiagnosticTiming();
        _units = new UnitDirectory(fitted, port, time, timing);
        _sessions = new SessionKeeper(_units, port, time, timing);
        _actions = new UnitActions(_units, _sessions, keys, time);
        _records = new RecordReader(_units);
        _services = new ServiceReader(_units, time);
        _obd = new ObdReader(fitted, port, time, timing);
        _broadcasts = new BroadcastReader(port, time);
    }

    /// <inheritdoc/>
    public string Role { get; }

    /// <inheritdoc/>
    public string? Instrument => null;

    /// <inheritdoc/>
    public ValueTask<Reading> ReadAsync(ReadRequest request, CancellationToken cancel) =>
        _port.State == LinkState.Up ? ReaderOf(request.Channel).ReadAsync(request, cancel) : new ValueTask<Reading>(LinkDown());

    /// <inheritdoc/>
    public async ValueTask<IReadOnlyList<Reading>> ReadEachAsync(ReadRequest request, IReadOnlyList<string> indexes, CancellationToken cancel) =>
        _port.State == LinkState.Up
            ? await ReaderOf(request.Channel).ReadEachAsync(request, indexes, cancel)
            : [.. indexes.Select(_ => LinkDown())];

    /// <inheritdoc/>
    public IDisposable Watch(ReadRequest request, TimeSpan every, IReadingListener listener) => request.Channel.Source is ChannelSource.Broadcast
        ? _broadcasts.Watch(request, listener)
        : PollWatch.Begin(ReaderOf(request.Channel), request, every, _time, listener);

    /// <inheritdoc/>
    public ValueTask<Reading> ActAsync(ActionRequest request, CancellationToken cancel) =>
        _port.State == LinkState.Up ? _actions.ActAsync(request, cancel) : new ValueTask<Reading>(LinkDown());

    /// <inheritdoc/>
    public async ValueTask<bool> OthersAnswerAsync(ReadRequest request, long since, CancellationToken cancel)
    {
        var silent = UnitOf(request);
        if (_units.AnyHeard(since, silent)) return true;
        foreach (var unit in _units.Fitted)
        {
            if (unit.Name == silent) continue;
            var end = await _units.Of(unit.Name).RequestAsync(TesterPresent.MakeRequest(), cancel);
            if (end.IsPositive || end.Missing == MissingCause.Refused) return true;
            if (end.Missing == MissingCause.LinkDown) return false;
        }

        return false;
    }

    /// <inheritdoc/>
    public ValueTask DisposeAsync()
    {
        _sessions.Dispose();
        _units.Dispose();
        return default;
    }

    private IChannelReader ReaderOf(ChannelDescription channel) => channel.Source switch
    {
        ChannelSource.Data or ChannelSource.RoutineResult => _records,
        ChannelSource.Service => _services,
        ChannelSource.Obd => _obd,
        ChannelSource.Broadcast => _broadcasts,
        _ => throw new InvalidOperationException($"the vehicle type does not say how '{channel.Name}' is obtained"),
    };

    /// <summary>The unit whose silence is in question; null when the channel is nobody's own.</summary>
    private static string? UnitOf(ReadRequest request) => request.Channel.Source switch
    {
        ChannelSource.Data data => data.Ecu ?? request.Index,
        ChannelSource.RoutineResult routine => routine.Ecu ?? request.Index,
        ChannelSource.Service service => service.Ecu ?? request.Index,
        _ => null,
    };

    private Reading LinkDown() => Reading.None(MissingCause.LinkDown, _time.GetTimestamp(), $"the link is {(_port.State == LinkState.BusOff ? "bus-off" : "down")}");
}
