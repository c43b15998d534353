using System.Collections.Immutable;
using EolSequencer.Model.Source;
using EolSequencer.Model.Values;

namespace EolSequencer.Model.Expressions;

/// <summary>
/// A side-effect-free C# expression of an author. It is made when its text is met and completed when all expressions
/// of its sequence have been compiled together; a checked sequence holds completed ones only. It can only see what it
/// declares, and gives a value of <see cref="Shape"/> or throws <see cref="ExpressionFault"/>.
/// </summary>
/// <param name="text">The author's text, without the brackets around it.</param>
/// <param name="place">Where the text stands.</param>
public sealed class Expression(string text, SourcePlace place)
{
    private Compiled? _compiled;

    /// <summary>What compiling found out and made.</summary>
    /// <param name="Shape">Type and unit of the value.</param>
    /// <param name="Channels">The channels named, in slot order.</param>
    /// <param name="Results">The results named, in slot order.</param>
    /// <param name="Evaluate">The compiled code; pure, safe to call from several runs at once. Arithmetic that fails may throw as it does.</param>
    /// <param name="IsInexact">True when the code itself works in binary floating point, whatever the values it is given.</param>
    public sealed record Compiled(
        ValueShape Shape, ImmutableArray<ChannelUse> Channels, ImmutableArray<ResultUse> Results, Func<ExpressionScope, Value> Evaluate, bool IsInexact = false)
    {
        /// <summary>The traces named, in slot order.</summary>
        public ImmutableArray<TraceUse> Traces { get; init; } = [];
    }

    /// <summary>The author's text.</summary>
    public string Text => text;

    /// <summary>Where the text stands.</summary>
    public SourcePlace Place => place;

    /// <summary>Type and unit of the value.</summary>
    public ValueShape Shape => Ready.Shape;

    /// <summary>The channels it names, in slot order.</summary>
    public ImmutableArray<ChannelUse> Channels => Ready.Channels;

    /// <summary>The results it names, in slot order.</summary>
    public ImmutableArray<ResultUse> Results => Ready.Results;

    /// <summary>The traces it names, in slot order.</summary>
    public ImmutableArray<TraceUse> Traces => Ready.Traces;

    /// <summary>True when the code itself works in binary floating point, whatever the values it is given.</summary>
    public bool IsInexact => Ready.IsInexact;

    /// <summary>True when only the vehicle, the order, parameters and loop names are named: may be decided before the first step.</summary>
    public bool IsKnownBeforeRun => Channels.IsEmpty && Results.IsEmpty && Traces.IsEmpty;

    private Compiled Ready => _compiled ?? throw new InvalidOperationException($"{place}: the expression has not been compiled");

    /// <summary>Called once, by the compiler.</summary>
    public void Complete(Compiled compiled) =>
        _compiled = _compiled is null ? compiled : throw new InvalidOperationException($"{place}: compiled twice");

    /// <summary>The value for one moment.</summary>
    /// <exception cref="ExpressionFault">There is none: overflow, division by zero, not finite, a missing value.</exception>
    public Value Evaluate(ExpressionScope scope)
    {
        var evaluate = Ready.Evaluate;
        scope.BeginWork();
        try
        {
            return evaluate(scope);
        }
        catch (Exception fault) when (fault is ArithmeticException or ArgumentOutOfRangeException)
        {
            throw ExpressionFault.Of(fault);
        }
    }

    /// <summary>The truth for one moment; for expressions of that shape.</summary>
    public bool IsTrue(ExpressionScope scope) => Evaluate(scope) is TruthValue { IsTrue: true };

    public override string ToString() => text;
}
