using System.Collections.Immutable;
using System.Text.RegularExpressions;
using EolSequencer.Model.Expressions;
using EolSequencer.Model.Units;

namespace EolSequencer.Model.Sequences;

/// <summary>What a value must be, as an author wrote behind <c>expect</c> or <c>takes</c>.</summary>
public abstract record Expectation
{
    private Expectation() { }

    /// <summary>A closed window; an end that is null is open. Both ends are in <paramref name="Unit"/>.</summary>
    public sealed record Within(Operand? Low, Operand? High, Unit? Unit) : Expectation;

    /// <summary><c>equals x</c>: exact for numbers, by code point for text.</summary>
    public sealed record EqualTo(Operand Wanted) : Expectation;

    /// <summary><c>one of [..]</c>.</summary>
    public sealed record OneOf(ImmutableArray<Operand> Wanted) : Expectation;

    /// <summary><c>only [..]</c>: a list holds nothing that is not named here; an empty list passes.</summary>
    public sealed record Only(ImmutableArray<string> Allowed) : Expectation;

    /// <summary><c>empty</c>: a list or text with nothing in it.</summary>
    public sealed record Empty : Expectation;

    /// <summary><c>matches /…/</c>: the whole text matches; matched without backtracking, culture invariant.</summary>
    public sealed record Matches(string Pattern, Regex Regex) : Expectation;

    /// <summary><c>yes</c> or <c>no</c>.</summary>
    public sealed record Truth(bool Wanted) : Expectation;

    /// <summary><c>limits.NAME</c> with one row for every possible vehicle; the plan picks the row.</summary>
    public sealed record ByVehicle(string Name, ImmutableArray<Row> Rows) : Expectation;

    /// <summary><c>limits.NAME</c> with one window for each value of an index.</summary>
    public sealed record ByIndex(string Name, ImmutableDictionary<string, Expectation> Windows) : Expectation
    {
        /// <summary>Which window, as in <c>limits.lamp_current[lamp]</c>; null: the one of the value's own index.</summary>
        public IndexUse? Index { get; init; }
    }

    /// <summary>A row of a limit; <paramref name="When"/> is null when it holds for every vehicle.</summary>
    public sealed record Row(Expression? When, Expectation Is);
}
