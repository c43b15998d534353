using System.Collections.Immutable;
using System.Text.RegularExpressions;
using EolSequencer.Model.Units;

namespace EolSequencer.Language.Expectations;

/// <summary>An expectation as far as its text alone says what it is; what it judges is not known yet.</summary>
/// <param name="Part">The whole text.</param>
internal abstract record ExpectationSyntax(ScalarPart Part)
{
    /// <summary>A window; one end at least is there, and two written ends are in order.</summary>
    /// <param name="Unit">The unit of written ends; null when none stands there.</param>
    public sealed record Window(ScalarPart Part, OperandSyntax? Low, OperandSyntax? High, Unit? Unit) : ExpectationSyntax(Part);

    public sealed record EqualTo(ScalarPart Part, OperandSyntax Wanted) : ExpectationSyntax(Part);

    public sealed record OneOf(ScalarPart Part, ImmutableArray<OperandSyntax> Wanted) : ExpectationSyntax(Part);

    public sealed record Only(ScalarPart Part, ImmutableArray<OperandSyntax> Allowed) : ExpectationSyntax(Part);

    public sealed record Empty(ScalarPart Part) : ExpectationSyntax(Part);

    public sealed record Matches(ScalarPart Part, string Pattern, Regex Regex) : ExpectationSyntax(Part);

    public sealed record Truth(ScalarPart Part, bool Wanted) : ExpectationSyntax(Part);

    /// <summary><c>limits.NAME</c> or <c>limits.NAME[index]</c>.</summary>
    /// <param name="Name">The name alone.</param>
    /// <param name="Index">The text between the brackets; null without brackets.</param>
    public sealed record Limit(ScalarPart Part, ScalarPart Name, ScalarPart? Index) : ExpectationSyntax(Part);
}
