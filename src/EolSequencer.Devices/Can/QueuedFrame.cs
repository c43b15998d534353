using EolSequencer.Wire.Can;

namespace EolSequencer.Devices.Can;

/// <summary>A frame that waits for the bus or for the news that it has gone out.</summary>
internal sealed class QueuedFrame(in CanFrame frame)
{
    private readonly TaskCompletionSource<Transmission> _end = new();

    public CanFrame Frame { get; } = frame;

    /// <summary>Nobody waits for it any more.</summary>
    public bool IsOver => _end.Task.IsCompleted;

    /// <summary>How it went; cancelled when the caller gave up.</summary>
    public async ValueTask<Transmission> WaitAsync(CancellationToken cancel)
    {
        using var giveUp = cancel.UnsafeRegister(static (frame, token) => ((QueuedFrame)frame!)._end.TrySetCanceled(token), this);
        return await _end.Task;
    }

    public void End(Transmission how) => _end.TrySetResult(how);
}
