using EolSequencer.Devices.Diagnostics;
using EolSequencer.Model.Devices;
using EolSequencer.Wire.Can;
using EolSequencer.Wire.IsoTp;
using EolSequencer.Wire.Uds;

namespace EolSequencer.Devices.VehicleBus;

/// <summary>
/// Keeps sessions alive while the operator thinks: a TesterPresent without answer to all units, more often than S3 of
/// a control unit (5000 ms) runs out.
/// </summary>
internal sealed class SessionKeeper : IDisposable
{
    private readonly UnitDirectory _units;
    private readonly DiagnosticTiming _timing;
    private readonly MessageSender _sender;
    private readonly ICanPort _port;
    private readonly ITimer _timer;
    private readonly HashSet<string> _extended = new(StringComparer.Ordinal);

    public SessionKeeper(UnitDirectory units, ICanPort port, TimeProvider time, DiagnosticTiming timing)
    {
        (_units, _port, _timing) = (units, port, timing);
        _sender = new MessageSender(TransportAddress.Functional(new Route(FunctionalId)), new TransportOptions());
        _timer = time.CreateTimer(_ => _ = KeepAsync(), null, Timeout.InfiniteTimeSpan, Timeout.InfiniteTimeSpan);
    }

    /// <summary>The functional request identifier of 11-bit networks (ISO 15765-4).</summary>
    public static CanId FunctionalId { get; } = CanId.Base(0x7DF);

    /// <summary>A unit has changed its session or has restarted.</summary>
    public void Note(string unit, ServiceAct act, ReadOnlySpan<byte> response)
    {
        switch (act)
        {
            case ServiceAct.ExtendedSession:
                var stated = DiagnosticSessionControl.ReadResponse(response);
                if (stated.Fault is null) _units.Of(unit).Use(stated.Value.Timing.P2, stated.Value.Timing.P2Star);
                if (_extended.Add(unit) && _extended.Count == 1) _timer.Change(_timing.KeepAlive, _timing.KeepAlive);
                break;
            case ServiceAct.DefaultSession or ServiceAct.Reset:
                if (_extended.Remove(unit) && _extended.Count == 0) _timer.Change(Timeout.InfiniteTimeSpan, Timeout.InfiniteTimeSpan);
                break;
        }
    }

    public void Dispose() => _timer.Dispose();

    /// <summary>A link that is down drops it; what needs the session will say so.</summary>
    private async Task KeepAsync()
    {
        if (_sender.IsSending) return;
        var step = _sender.Begin(TesterPresent.MakeRequest(suppressPositive: true));
        var sent = await _port.SendAsync(step.Frame!.Value, CancellationToken.None);
        _ = sent.IsConfirmed ? _sender.Confirm() : _sender.Fail();
    }
}
