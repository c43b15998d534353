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
    private readonly TimeProvider _time;
    private readonly ReadRequest _request;
    private readonly ChannelSource.Broadcast _source;
    private readonly Action<Reading> _received;
    private readonly TimeSpan _limit;
    private readonly IDisposable _listening;
    private readonly ITimer _stale;
    private readonly bool _repeatsAreSkipped;
    private bool _heard;

    public SignalWatch(ICanPort port, TimeProvider time, ReadRequest request, Action<Reading> received)
    {
        (_time, _request, _received) = (time, request, received);
        _source = (ChannelSource.Broadcast)request.Channel.Source!;
        _limit = _source.Cycle * BroadcastReader.StaleAfterCycles;
        _repeatsAreSkipped = port.LeavesOutRepeats;
        _stale = time.CreateTimer(_ => Stale(), null, _limit, Timeout.InfiniteTimeSpan);
        _listening = port.Listen(UnitDirectory.IdOf(_source.FrameId), this, Repeats.MayBeSkipped);
    }

    public void Received(in CanFrame frame, long stamp)
    {
        _stale.Change(_repeatsAreSkipped ? Timeout.InfiniteTimeSpan : _limit, Timeout.InfiniteTimeSpan);
        if (stamp < _request.NotBefore) return;
        _heard = true;
        _received(BroadcastReader.Decode(_source, _request.Index, frame.Data, stamp));
    }

    public void Silenced(CanId id, long lastStamp)
    {
        var left = _limit - _time.GetElapsedTime(lastStamp);
        _stale.Change(left > TimeSpan.Zero ? left : TimeSpan.Zero, Timeout.InfiniteTimeSpan);
    }

    public void Dispose()
    {
        _listening.Dispose();
        _stale.Dispose();
    }

    private void Stale() => _received(Reading.None(
        _heard ? MissingCause.Stale : MissingCause.Silent,
        _time.GetTimestamp(),
        $"frame {_source.FrameId:X3} has not come for {BroadcastReader.StaleAfterCycles} cycles of {_source.Cycle.TotalMilliseconds:0} ms"));
}
