using EolSequencer.Model.Judging;
using EolSequencer.Model.Traces;
using EolSequencer.Model.Values;

namespace EolSequencer.Model.Expressions;

/// <summary>
/// What one evaluation of an expression sees. Slots count the uses that the expression declares, from 0; whoever
/// evaluates has sampled them before, so nothing here waits.
/// </summary>
/// <remarks>
/// Channels are read without a virtual call: code that can be unloaded is compiled once and never again with what a
/// profile has shown, so a call through an interface would cost it more than everything else in a short condition.
/// </remarks>
public abstract class ExpressionScope
{
    /// <summary>
    /// The most work of one evaluation. An expression has no loop, so its own length bounds it; what it may ask for once is
    /// as long as the data, and that is counted. At some nanoseconds a unit this is a fraction of a second.
    /// </summary>
    public const long MostWork = 20_000_000;

    private const long WorkBetweenLooks = 100_000;

    private Value?[] _channels = [];
    private long _work;
    private long _nextLook;

    /// <summary>The sampled value of <see cref="Expression.Channels"/>[slot].</summary>
    public Value Channel(int slot)
    {
        var channels = _channels;
        return (uint)slot < (uint)channels.Length && channels[slot] is { } value ? value : NoValue(slot);
    }

    /// <summary>The value of the vehicle's option, or its identification number under the name <c>vin</c>.</summary>
    public abstract Value Vehicle(string option);

    /// <summary>What the order says: a fact, of one index when the fact has an index.</summary>
    public abstract Value Order(string fact, string? index);

    /// <summary>A loop name or parameter.</summary>
    public abstract Value Argument(string name);

    /// <summary>How often the truth of <see cref="Expression.Channels"/>[slot] has changed since the step began to wait.</summary>
    public abstract int Edges(int slot);

    /// <summary>The newest result of <see cref="Expression.Results"/>[slot]; null when that step has none.</summary>
    public abstract ResultView? Result(int slot);

    /// <summary>What <see cref="Expression.Traces"/>[slot] has recorded; never null, a trace that is missing throws.</summary>
    /// <exception cref="ExpressionFault">The group has not been captured in this run.</exception>
    public abstract Trace Trace(int slot);

    /// <summary>The roll-up verdict; only steps of <c>after-verdict</c> may ask.</summary>
    public abstract Verdict RunVerdict { get; }

    /// <summary>
    /// Counts work that grows with the data: about one unit for each reading or letter looked at. The same count ends the
    /// same evaluation everywhere, so a rehearsal shows it too.
    /// </summary>
    /// <exception cref="ExpressionFault">The work of one evaluation is used up, or the step's time limit is over.</exception>
    public void Spend(long work)
    {
        _work += work;
        if (_work > MostWork) throw new ExpressionFault("the expression takes more work than one evaluation may: it looks at too much, or too often");
        if (_work < _nextLook) return;
        _nextLook = _work + WorkBetweenLooks;
        if (IsOverdue) throw new ExpressionFault("the time limit of the step came before the end of the expression");
    }

    /// <summary>True when the step that asks has used up its time.</summary>
    protected virtual bool IsOverdue => false;

    internal void BeginWork() => _work = _nextLook = 0;

    /// <summary>Sets the values of the channels, in slot order.</summary>
    protected void Sample(Value?[] channels) => _channels = channels;

    /// <summary>A channel has no value: says why, as the exception it throws.</summary>
    protected abstract Value NoValue(int slot);
}
