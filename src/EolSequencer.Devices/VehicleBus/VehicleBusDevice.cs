using EolSequencer.Devices.Diagnostics;
using EolSequencer.Devices.Transport;
using EolSequencer.Model.Devices;
using EolSequencer.Model.Judging;
using EolSequencer.Model.Ports;
using EolSequencer.Model.Values;
using EolSequencer.Model.Vehicles;
using EolSequencer.Wire.Can;
using EolSequencer.Wire.IsoTp;
using EolSequencer.Wire.Uds;

namespace EolSequencer.Devices.VehicleBus;

/// <summary>
/// The bus of one vehicle, as its vehicle type describes it: identifiers, OBD parameters, broadcast signals and
/// services over a CAN port, real or simulated.
/// </summary>
public sealed class VehicleBusDevice : IDevice
{
    /// <summary>The most control units that are asked whether the bus is alive.</summary>
    public const int MostOthersAsked = 3;

    private readonly ICanPort _port;
    private readonly TimeProvider _time;
    private readonly IAsyncDisposable? _link;
    private readonly UnitDirectory _units;
    private readonly SessionKeeper _sessions;
    private readonly UnitActions _actions;
    private readonly RecordReader _records;
    private readonly ServiceReader _services;
    private readonly ObdReader _obd;
    private readonly BroadcastReader _broadcasts;
    private bool _isClosed;

    /// <param name="fitted">The control units that this vehicle has.</param>
    /// <param name="keys">Opens security levels; null: none can be opened.</param>
    /// <param name="timing">How long units are waited for; null: the standard's times.</param>
    /// <param name="transport">Padding and what else the bus wants of ISO-TP frames; null: padded with CC.</param>
    /// <param name="note">Told what whoever looks after the station should know; null: nobody.</param>
    /// <param name="link">Closed with the device; null: the port is somebody else's.</param>
    /// <exception cref="ArgumentException">Two control units share an address; the vehicle type's check has let it through.</exception>
    public VehicleBusDevice(
        string role,
        ICanPort port,
        TimeProvider time,
        IReadOnlyList<ControlUnit> fitted,
        IKeyAlgorithm? keys = null,
        DiagnosticTiming? timing = null,
        TransportOptions? transport = null,
        Action<string>? note = null,
        IAsyncDisposable? link = null)
    {
        (Role, _port, _time, _link) = (role, port, time, link);
        timing ??= new DiagnosticTiming();
        _units = new UnitDirectory(fitted, new TransportLink(port, time) { Options = transport ?? new TransportOptions() }, timing, note);
        _sessions = new SessionKeeper(_units, time, timing);
        _actions = new UnitActions(_units, _sessions, keys, time);
        _records = new RecordReader(_units);
        _services = new ServiceReader(_units, time);
        _obd = new ObdReader(_units);
        _broadcasts = new BroadcastReader(port, time);
    }

    /// <inheritdoc/>
    public string Role { get; }

    /// <inheritdoc/>
    public string? Instrument => null;

    private bool IsUp => !_isClosed && _port.State == LinkState.Up;

    /// <summary>Asks every fitted control unit whether it is there; one that answers is enough.</summary>
    public async ValueTask<Reading> IdentifyAsync(CancellationToken cancel)
    {
        var silent = new List<string>();
        foreach (var unit in _units.Fitted.Select(unit => _units.Of(unit.Name)))
        {
            if (!IsUp) return LinkDown();
            var end = await unit.RequestAsync(TesterPresent.MakeRequest(), cancel);
            if (end.Missing == MissingCause.LinkDown) return LinkDown();
            if (!end.IsPositive && end.Missing != MissingCause.Refused) silent.Add(unit.Unit);
        }

        var (all, missing) = (_units.Fitted.Count, silent.Count == 0 ? "" : $"; silent: {string.Join(", ", silent)}");
        return silent.Count < all
            ? Reading.Of(new TextValue($"{all - silent.Count} of {all} control units answer{missing}"), _time.GetTimestamp())
            : Reading.None(MissingCause.Silent, _time.GetTimestamp(), $"none of {all} control units answers tester present (3E 00) - is the vehicle connected?");
    }

    /// <inheritdoc/>
    public ValueTask<Reading> ReadAsync(ReadRequest request, CancellationToken cancel) =>
        IsUp ? ReaderOf(request.Channel).ReadAsync(request, cancel) : new ValueTask<Reading>(LinkDown());

    /// <inheritdoc/>
    public ValueTask<IReadOnlyList<Reading>> ReadEachAsync(ReadRequest request, IReadOnlyList<string> indexes, CancellationToken cancel) => IsUp
        ? ReaderOf(request.Channel).ReadEachAsync(request, indexes, cancel)
        : new ValueTask<IReadOnlyList<Reading>>([.. indexes.Select(_ => LinkDown())]);

    /// <inheritdoc/>
    public IDisposable Watch(ReadRequest request, TimeSpan every, IReadingListener listener) => request.Channel.Source is ChannelSource.Broadcast
        ? _broadcasts.Watch(request, listener)
        : PollWatch.Begin(ReaderOf(request.Channel), request, every, _time, listener);

    /// <inheritdoc/>
    public ValueTask<Reading> ActAsync(ActionRequest request, CancellationToken cancel) =>
        IsUp ? _actions.ActAsync(request, cancel) : new ValueTask<Reading>(LinkDown());

    /// <summary>
    /// Whether another control unit was heard after a moment, or answers now. At most <see cref="MostOthersAsked"/> are
    /// asked, those heard last first: several dead ones do not make a test wait long.
    /// </summary>
    public async ValueTask<bool> OthersAnswerAsync(ReadRequest request, long since, CancellationToken cancel)
    {
        var others = _units.Others(than: UnitOf(request)).ToList();
        if (others.Exists(unit => unit.LastHeard > since)) return true;
        foreach (var unit in others.Take(MostOthersAsked))
        {
            if (!IsUp) return false;
            var end = await unit.RequestAsync(TesterPresent.MakeRequest(), cancel);
            if (end.IsPositive || end.Missing == MissingCause.Refused) return true;
            if (end.Missing == MissingCause.LinkDown) return false;
        }

        return false;
    }

    /// <inheritdoc/>
    public ValueTask DisposeAsync()
    {
        _isClosed = true;
        _sessions.Dispose();
        _units.Dispose();
        return _link?.DisposeAsync() ?? default;
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
    private static string? UnitOf(in ReadRequest request) => request.Channel.Source switch
    {
        ChannelSource.Data data => data.Ecu ?? request.Index,
        ChannelSource.RoutineResult routine => routine.Ecu ?? request.Index,
        ChannelSource.Service service => service.Ecu ?? request.Index,
        _ => null,
    };

    private Reading LinkDown() => Reading.None(
        MissingCause.LinkDown,
        _time.GetTimestamp(),
        _isClosed ? "the device is closed" : $"the link is {(_port.State == LinkState.BusOff ? "bus-off" : "down")}");
}
