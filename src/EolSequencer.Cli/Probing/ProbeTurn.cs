namespace EolSequencer.Cli.Probing;

/// <summary>The time of one command.</summary>
internal sealed class ProbeTurn : IDisposable
{
    private readonly CancellationTokenSource _asked = new();
    private readonly CancellationTokenSource _stopping = new();

    /// <summary>Cancelled at once when somebody asks, on whatever thread: for what only waits for other threads.</summary>
    public CancellationToken Asked => _asked.Token;

    /// <summary>Cancelled on the session's thread: for devices. Virtual time has no moment for it; what goes on there looks at <see cref="Asked"/>.</summary>
    public CancellationToken Stopping => _stopping.Token;

    public void Ask() => _asked.Cancel();

    public void Stop() => _stopping.Cancel();

    public void Dispose()
    {
        _asked.Dispose();
        _stopping.Dispose();
    }
}
