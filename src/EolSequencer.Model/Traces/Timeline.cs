using System.Collections.Immutable;
using EolSequencer.Model.Expressions;

namespace EolSequencer.Model.Traces;

/// <summary>What curves of numbers and of truth values have in common: a name, an end, and where they are not known.</summary>
/// <param name="Name">For messages.</param>
/// <param name="Gaps">Where it is not known, in order of time.</param>
/// <param name="Length">How long the capture lasted, in microseconds.</param>
public abstract record Timeline(string Name, ImmutableArray<TraceGap> Gaps, long Length)
{
    /// <summary>How many readings there are.</summary>
    public abstract int Count { get; }

    /// <summary>Every feature but a value at a moment wants to know the whole curve: what fell into a gap was not seen.</summary>
    /// <exception cref="ExpressionFault">There is a gap, or no reading at all.</exception>
    protected void RequireWhole(int readings = 1)
    {
        if (Gaps is [var gap, ..]) throw Unknown(gap);
        if (Count < readings) throw new ExpressionFault($"{Name} has {(Count == 0 ? "no reading" : $"{Count} of the {readings} readings wanted")} in this part of the trace");
    }

    /// <summary>The value at this moment is known as far as the link is concerned.</summary>
    protected void RequireKnown(long moment)
    {
        foreach (var gap in Gaps)
        {
            if (moment > gap.From && moment < gap.To) throw Unknown(gap);
        }
    }

    /// <summary>The gaps that reach into a part.</summary>
    protected ImmutableArray<TraceGap> GapsBetween(long from, long to) => [.. Gaps.Where(gap => gap.To > from && gap.From < to)];

    /// <summary>Both ends of a part lie in the capture, in the right order.</summary>
    protected void RequirePart(long from, long to)
    {
        if (from > to) throw new ExpressionFault($"the part of {Name} ends at {Moments.Text(to)}, before its start at {Moments.Text(from)}");
        if (from < 0 || to > Length) throw Outside(from < 0 ? from : to);
    }

    /// <summary>A moment at which the capture had not begun, or had ended.</summary>
    protected ExpressionFault Outside(long moment) =>
        new($"{Moments.Text(moment)} lies outside the trace of {Name}, which lasts {Moments.Text(Length)}");

    private ExpressionFault Unknown(TraceGap gap) =>
        new($"the trace of {Name} has a gap from {Moments.Text(gap.From)} to {Moments.Text(gap.To)}: {gap.Cause}");
}
