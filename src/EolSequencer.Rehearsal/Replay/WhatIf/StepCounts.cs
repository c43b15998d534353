using EolSequencer.Model.Judging;

namespace EolSequencer.Rehearsal.Replay.WhatIf;

/// <summary>How often one step came out how, then and by the revision. Not needed, not applicable and absent are in none of the numbers.</summary>
public sealed class StepCounts
{
    private readonly long[] _was = new long[5];
    private readonly long[] _is = new long[5];

    /// <summary>Runs in which the revision says something else.</summary>
    public long Changed { get; private set; }

    /// <summary>Runs in which the record does not tell.</summary>
    public long Undecidable { get; private set; }

    /// <summary>Why not, the first reason met; null when it always tells.</summary>
    public string? Why { get; private set; }

    /// <summary>Runs that counted so then.</summary>
    public long Was(Verdict verdict) => _was[(int)verdict];

    /// <summary>Runs that count so by the revision.</summary>
    public long Is(Verdict verdict) => _is[(int)verdict];

    internal void Add(ReplayedStep step)
    {
        if (step.Was.IsCounting) _was[(int)step.Was.Counted]++;
        if (step.Is.IsCounting) _is[(int)step.Is.Counted]++;
        if (step.IsChanged) Changed++;
        if (!step.IsUndecidable) return;
        Undecidable++;
        if (Why is null || string.CompareOrdinal(step.Why, Why) < 0) Why = step.Why;
    }

    internal void Add(StepCounts other)
    {
        for (var at = 0; at < _was.Length; at++)
        {
            _was[at] += other._was[at];
            _is[at] += other._is[at];
        }

        Changed += other.Changed;
        Undecidable += other.Undecidable;
        if (Why is null || (other.Why is not null && string.CompareOrdinal(other.Why, Why) < 0)) Why = other.Why ?? Why;
    }
}
