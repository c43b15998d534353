using System.Runtime.CompilerServices;
using EolSequencer.Wire.Can;

namespace EolSequencer.Devices.Transport;

/// <summary>Puts frames on a bus and takes back what is not confirmed in time.</summary>
internal sealed class FrameSender : IDisposable
{
    private readonly ICanPort _port;
    private readonly TimeProvider _time;
    private readonly TimeSpan _most;
    private readonly ITimer _limit;
    private CancellationTokenSource _withdrawal = new();
    private int _underWay;
    private bool _isClosed;

    /// <param name="most">N_As or N_Ar: from handing a frame to the port to its confirmation (ISO 15765-2).</param>
    public FrameSender(ICanPort port, TimeProvider time, TimeSpan most)
    {
        (_port, _time, _most) = (port, time, most);
        _limit = time.CreateTimer(static sender => ((FrameSender)sender!).Withdraw(), this, Timeout.InfiniteTimeSpan, Timeout.InfiniteTimeSpan);
    }

    /// <summary>Sends a frame and waits for its confirmation.</summary>
    /// <returns>How it went; null when it was not confirmed in time, so that it was taken back.</returns>
    /// <exception cref="OperationCanceledException">The caller gave up; the frame was taken back.</exception>
    [AsyncMethodBuilder(typeof(PoolingAsyncValueTaskMethodBuilder<>))]
    public async ValueTask<Transmission?> SendAsync(CanFrame frame, CancellationToken cancel)
    {
        cancel.ThrowIfCancellationRequested();
        if (_isClosed) return new Transmission(LinkState.Down, _time.GetTimestamp());
        if (_withdrawal.IsCancellationRequested) _withdrawal = new CancellationTokenSource();
        using var giveUp = cancel.UnsafeRegister(static sender => ((FrameSender)sender!).Withdraw(), this);
        _limit.Change(_most, Timeout.InfiniteTimeSpan);
        _underWay++;
        try
        {
            return await _port.SendAsync(frame, _withdrawal.Token);
        }
        catch (OperationCanceledException)
        {
            cancel.ThrowIfCancellationRequested();
            return null;
        }
        finally
        {
            if (--_underWay == 0) _limit.Change(Timeout.InfiniteTimeSpan, Timeout.InfiniteTimeSpan);
        }
    }

    public void Dispose()
    {
        _isClosed = true;
        Withdraw();
        _limit.Dispose();
    }

    private void Withdraw() => _withdrawal.Cancel();
}
