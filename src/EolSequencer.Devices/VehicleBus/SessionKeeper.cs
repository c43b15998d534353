using EolSequencer.Devices.Diagnostics;
using EolSequencer.Devices.Transport;
using EolSequencer.Model.Devices;
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
    private readonly IReadOnlyList<TransportChannel> _toAll;
    private readonly ITimer _timer;
    private readonly byte[] _present = TesterPresent.MakeRequest(suppressPositive: true);
    private readonly HashSet<string> _extended = new(StringComparer.Ordinal);
    private bool _isSending;

    public SessionKeeper(UnitDirectory units, TimeProvider time, DiagnosticTiming timing)
    {
        (_units, _timing, _toAll) = (units, timing, units.ToAll());
        _timer = time.CreateTimer(static keeper => ((SessionKeeper)keeper!).Keep(), this, Timeout.InfiniteTimeSpan, Timeout.InfiniteTimeSpan);
    }

    /// <summary>A unit has confirmed a session or a restart.</summary>
    public void Note(string unit, ServiceAct act, ReadOnlySpan<byte> response)
    {
        switch (act)
        {
            case ServiceAct.ExtendedSession:
                TakeTimes(unit, response);
                if (_extended.Add(unit) && _extended.Count == 1) _timer.Change(_timing.KeepAlive, _timing.KeepAlive);
                break;
            case ServiceAct.DefaultSession:
                TakeTimes(unit, response);
                Leave(unit);
                break;
            case ServiceAct.Reset:
                _units.Of(unit).Use(null);
                Leave(unit);
                break;
        }
    }

    public void Dispose()
    {
        _timer.Dispose();
        foreach (var channel in _toAll) channel.Dispose();
    }

    /// <summary>Units after an early edition of ISO 14229-1 state no times.</summary>
    private void TakeTimes(string unit, ReadOnlySpan<byte> response)
    {
        if (DiagnosticSessionControl.ReadResponse(response).TryGet(out var stated)) _units.Of(unit).Use(stated.Timing);
    }

    private void Leave(string unit)
    {
        if (_extended.Remove(unit) && _extended.Count == 0) _timer.Change(Timeout.InfiniteTimeSpan, Timeout.InfiniteTimeSpan);
    }

    // A link that is down drops it, and what needs the session will say so. Nobody awaits it; "async void" lets a
    // broken assumption reach the run's thread all the same.
    private async void Keep()
    {
        if (_isSending) return;
        _isSending = true;
        foreach (var channel in _toAll) await channel.SendAsync(_present, CancellationToken.None);
        _isSending = false;
    }
}
