using EolSequencer.Model.Judging;
using EolSequencer.Model.Values;

namespace EolSequencer.Model.Expressions;

/// <summary>
/// What one evaluation of an expression sees. Slots count the uses that the expression declares, from 0; whoever
/// evaluates has sampled them before, so nothing here waits.
/// </summary>
public interface IExpressionScope
{
    /// <summary>The value of the vehicle's option, or its identification number under the name <c>vin</c>.</summary>
    Value Vehicle(string option);

    /// <summary>What the order says: a fact, of one index when the fact has an index.</summary>
    Value Order(string fact, string? index);

    /// <summary>A loop name or parameter.</summary>
    Value Argument(string name);

    /// <summary>The sampled value of <see cref="Expression.Channels"/>[slot].</summary>
    Value Channel(int slot);

    /// <summary>How often the truth of <see cref="Expression.Channels"/>[slot] has changed since the step began to wait.</summary>
    int Edges(int slot);

    /// <summary>The newest result of <see cref="Expression.Results"/>[slot]; null when that step has none.</summary>
    ResultView? Result(int slot);

    /// <summary>The roll-up verdict; only steps of <c>after-verdict</c> may ask.</summary>
    Verdict RunVerdict { get; }
}
