using System.Collections.Immutable;
using EolSequencer.Model.Units;
using EolSequencer.Model.Values;

namespace EolSequencer.Language.Expressions;

/// <summary>What the place of an expression asks of its value. Anything else is a load error.</summary>
internal abstract record Wanted
{
    private Wanted() { }

    /// <summary>Whatever the expression gives: <c>compute</c>, or an <c>equals</c> whose shape is checked afterwards.</summary>
    public static Wanted Anything { get; } = new Any();

    /// <summary>Yes or no: every condition.</summary>
    public static Wanted Truth { get; } = new One(ValueShape.Truth);

    /// <summary>A text, any.</summary>
    public static Wanted Text { get; } = new One(ValueShape.Text());

    /// <summary>A duration; given in seconds.</summary>
    public static Wanted Time { get; } = new One(ValueShape.Time);

    /// <summary>A number without a unit.</summary>
    public static Wanted Count { get; } = new One(ValueShape.Count);

    /// <summary>A quantity of the unit's dimension; given in that unit.</summary>
    public static Wanted In(Unit unit) => new One(ValueShape.Number(unit));

    /// <summary>
    /// A value of this shape: a number of the unit's dimension is given in that unit, a text with choices must be known to
    /// be one of them.
    /// </summary>
    public static Wanted Of(ValueShape shape) => new One(shape);

    /// <summary>As <see cref="Anything"/> says.</summary>
    internal sealed record Any : Wanted;

    /// <summary>As <see cref="Of"/> says.</summary>
    internal sealed record One(ValueShape Shape) : Wanted;

    /// <summary>Only texts out of a closed list would do.</summary>
    internal ImmutableArray<string> Choices => this is One { Shape.Choices: var choices } ? choices : [];
}
