using EolSequencer.Model.Judging;
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
    private Value?[] _channels = [];

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

    /// <summary>The roll-up verdict; only steps of <c>after-verdict</c> may ask.</summary>
    public abstract Verdict RunVerdict { get; }

    /// <summary>Sets the values of the channels, in slot order.</summary>
    protected void Sample(Value?[] channels) => _channels = channels;

    /// <summary>A channel has no value: says why, as the exception it throws.</summary>
    protected abstract Value NoValue(int slot);
}
