namespace EolSequencer.Engine.Waiting;

/// <summary>Why a part of a run may not go on.</summary>
internal enum HaltKind
{
    /// <summary>A person, a step or another branch stopped it.</summary>
    Stopped,

    /// <summary>A condition that must hold was lost.</summary>
    Lost,
}

/// <summary>
/// Ends whatever waits inside a part of a run. A halt of the part around it counts as well; the first reason wins.
/// </summary>
internal sealed class Halt : IDisposable
{
    private readonly CancellationTokenSource _source = new();
    private readonly Halt? _around;
    private readonly CancellationTokenRegistration _outer;

    public Halt(Halt? around = null)
    {
        _around = around;
        if (around is not null) _outer = around.Token.UnsafeRegister(static halt => ((Halt)halt!).RaiseWithOuter(), this);
    }

    public CancellationToken Token => _source.Token;

    public bool IsRaised => Reason is not null;

    public HaltKind Kind { get; private set; }

    /// <summary>For people; null while nothing is the matter.</summary>
    public string? Reason { get; private set; }

    public void Raise(HaltKind kind, string reason)
    {
        if (IsRaised) return;
        (Kind, Reason) = (kind, reason);
        _source.Cancel();
    }

    private void RaiseWithOuter() => Raise(_around!.Kind, _around.Reason!);

    public void Dispose()
    {
        _outer.Dispose();
        _source.Dispose();
    }
}
