using EolSequencer.Model.Expressions;
using EolSequencer.Model.Sequences;
using EolSequencer.Model.Units;
using EolSequencer.Model.Values;

namespace EolSequencer.Engine.Judging;

/// <summary>The values of operands at their moment. They name results, names and facts, never channels.</summary>
internal static class Operands
{
    /// <summary>The value written down or computed.</summary>
    /// <param name="scope">For what is computed; null where everything is written down.</param>
    public static Value Value(Operand operand, RunScope? scope) => operand switch
    {
        Operand.Constant constant => constant.Value,
        Operand.Computed computed when scope is not null => scope.Evaluate(computed.Expression),
        Operand.Computed => throw new InvalidOperationException($"nothing is computed here, and {operand} is to be"),
        _ => throw new InvalidOperationException("an operand is written or computed"),
    };

    /// <summary>A time, to the 100 ns of the clock.</summary>
    public static TimeSpan Duration(Operand operand, RunScope scope)
    {
        var value = Value(operand, scope);
        if (value is not NumberValue number || !number.TryIn(UnitTable.Second, out var seconds) || seconds is < 0 or > 1_000_000)
        {
            throw new ExpressionFault($"{value} is no time between 0 and 1,000,000 s");
        }

        return new TimeSpan((long)(seconds * TimeSpan.TicksPerSecond));
    }
}
