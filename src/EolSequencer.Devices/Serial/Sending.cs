namespace EolSequencer.Devices.Serial;

/// <summary>Bytes on their way to a port.</summary>
internal sealed class Sending(ReadOnlyMemory<byte> bytes)
{
    private readonly TaskCompletionSource<string?> _end = new();
    private volatile bool _isWithdrawn;

    public ReadOnlyMemory<byte> Bytes => bytes;

    /// <summary>Nobody waits for it any more; what has not been written is not written.</summary>
    public bool IsWithdrawn => _isWithdrawn;

    public Task<string?> Ended => _end.Task;

    /// <param name="why">Why the bytes did not go out; null when they did.</param>
    public void End(string? why) => _end.TrySetResult(why);

    public void Withdraw(CancellationToken cancel)
    {
        _isWithdrawn = true;
        _end.TrySetCanceled(cancel);
    }
}
