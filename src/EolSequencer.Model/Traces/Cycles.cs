using EolSequencer.Model.Expressions;
using EolSequencer.Model.Values;

namespace EolSequencer.Model.Traces;

/// <summary>How regular moments make a rate.</summary>
internal static class Cycles
{
    private const double MicrosecondsPerMinute = 60e6;

    /// <summary>Whole cycles a minute, from the first moment to the last.</summary>
    public static decimal Rate(IReadOnlyList<long> rises, string name)
    {
        if (rises.Count < 2 || rises[^1] == rises[0])
        {
            throw new ExpressionFault($"{name} {(rises.Count == 0 ? "never rises" : "rises only once")} in this part of the trace; a rate wants two rises");
        }

        return FloatingNumber.TryFromDouble((rises.Count - 1) * MicrosecondsPerMinute / (rises[^1] - rises[0]), out var rate)
            ? rate
            : throw new ExpressionFault($"the rate of {name} is not finite");
    }
}
