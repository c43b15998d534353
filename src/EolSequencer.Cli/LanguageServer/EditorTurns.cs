namespace EolSequencer.Cli.LanguageServer;

/// <summary>Lets one at a time ask the editing service; a long check can see that somebody waits.</summary>
internal sealed class EditorTurns
{
    private readonly Lock _turn = new();
    private int _waiting;

    /// <summary>True while somebody waits for a turn.</summary>
    public bool IsWanted => Volatile.Read(ref _waiting) > 0;

    public T Take<T>(Func<T> ask)
    {
        Interlocked.Increment(ref _waiting);
        lock (_turn)
        {
            Interlocked.Decrement(ref _waiting);
            return ask();
        }
    }
}
