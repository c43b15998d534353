using EolSequencer.Model.Devices;
using EolSequencer.Model.Judging;
using EolSequencer.Model.Ports;
using EolSequencer.Wire.Can;

namespace EolSequencer.Devices.VehicleBus;

/// <summary>
/// Listens to one signal. A link that leaves out repeats says itself when the sender stops; on any other link the own
/// timer, started anew at each arrival, finds it out.
/// </summary>
internal sealed class SignalWatch : ICanListener, IDisposable
{
    private readonly ICanPort _port;
    private readonly TimeProvider _time;
    private readonly ReadRequest _request;
    private readonly ChannelSource.Broadcast _source;
    private readonly Action<Reading> _received;
    private readonly TimeSpan _limit;
    private readonly ITimer _stale;
    private IDisposable _listening;
    private bool _hasHeard;
    private bool _hasEnded;

    public SignalWatch(ICanPort port, TimeProvider time, in ReadRequest request, Action<Reading> received)
    {
        (_port, _time, _request, _received) = (port, time, request, received);
        _source = (ChannelSource.Broadcast)request.Channel.Source!;
        _limit = _source.Cycle * BroadcastReader.StaleAfterCycles;
        _stale = time.CreateTimer(
            static watch => ((SignalWatch)watch!).Stale(), this, port.State == LinkState.Up ? _limit : TimeSpan.Zero, Timeout.InfiniteTimeSpan);
        _listening = Listen();
        port.LinkChanged += Changed;
    }

    public void Received(in CanFrame frame, long stamp)
    {
        _stale.Change(SaysWhenSilent ? Timeout.InfiniteTimeSpan : _limit, Timeout.InfiniteTimeSpan);
        if (stamp < _request.NotBefore) return;
        _hasHeard = true;
        _received(BroadcastReader.Decode(_source, _request.Index, frame.Data, stamp));
    }

    public void Silenced(CanId id, long lastStamp)
    {
        var left = _limit - _time.GetElapsedTime(lastStamp);
        _stale.Change(left > TimeSpan.Zero ? left : TimeSpan.Zero, Timeout.InfiniteTimeSpan);
    }

    public void Dispose()
    {
        _hasEnded = true;
        _port.LinkChanged -= Changed;
        _listening.Dispose();
        _stale.Dispose();
    }

    /// <summary>Only who may be spared repeats is told when the sender stops.</summary>
    private bool SaysWhenSilent => _port.LeavesOutRepeats && !_request.EveryArrival;

    private IDisposable Listen() => _port.Listen(BusAddresses.IdOf(_source.FrameId), this, _request.EveryArrival ? Repeats.All : Repeats.MayBeSkipped);

    /// <summary>What was left out while the link was down is not made up for, so the listening begins anew when it is back.</summary>
    private void Changed(LinkChange change)
    {
        if (_hasEnded) return;
        if (change.State != LinkState.Up)
        {
            Stale();
            return;
        }

        _listening.Dispose();
        _listening = Listen();
        _stale.Change(_limit, Timeout.InfiniteTimeSpan);
    }

    private void Stale()
    {
        _stale.Change(Timeout.InfiniteTimeSpan, Timeout.InfiniteTimeSpan);
        var name = BusAddresses.IdOf(_source.FrameId);
        _received(_port.State == LinkState.Up
            ? Reading.None(
                _hasHeard ? MissingCause.Stale : MissingCause.Silent,
                _time.GetTimestamp(),
                $"frame {name} has not come for {BroadcastReader.StaleAfterCycles} cycles of {_source.Cycle.TotalMilliseconds:0} ms")
            : Reading.None(MissingCause.LinkDown, _time.GetTimestamp(), $"frame {name} cannot come, the link is down"));
    }
}
