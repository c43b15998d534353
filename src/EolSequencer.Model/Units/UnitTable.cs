using System.Collections.Frozen;
using System.Collections.Immutable;

namespace EolSequencer.Model.Units;

/// <summary>All units that files, records and expressions may use.</summary>
public static class UnitTable
{
    /// <summary>Every unit once, in the order of the table.</summary>
    public static ImmutableArray<Unit> All { get; } = [.. UnitEntries.All()];

    private static readonly FrozenDictionary<string, Unit> BySpelling = All
        .SelectMany(unit => unit.OtherSpellings.Prepend(unit.Symbol).Select(spelling => (spelling, unit)))
        .ToFrozenDictionary(entry => entry.spelling, entry => entry.unit, StringComparer.Ordinal);

    /// <summary>The unit of durations, <c>s</c>.</summary>
    public static Unit Second { get; } = Required("s");

    /// <summary>Finds the unit an author or an instrument means.</summary>
    /// <param name="text">The spelling, exactly: case counts, because it tells milli from mega.</param>
    /// <returns>The unit, or why there is none and what may have been meant.</returns>
    public static UnitLookup Find(string text) =>
        Exact(text) is { } unit ? new UnitLookup.Found(unit) : UnitGuess.For(text);

    /// <summary>A unit that our own code or an earlier record of ours names; an unknown symbol is a broken assumption and throws.</summary>
    public static Unit Required(string symbol) =>
        Exact(symbol) ?? throw new ArgumentException($"the unit table has no '{symbol}'", nameof(symbol));

    /// <summary>The unit of a spelling, or null; unlike <see cref="Find"/> nobody thinks about what else may have been meant.</summary>
    public static Unit? Exact(string spelling) => BySpelling.GetValueOrDefault(spelling);

    /// <summary>The units of one dimension, in the order of the table.</summary>
    public static ImmutableArray<Unit> Of(Dimension dimension) => [.. All.Where(unit => unit.Dimension == dimension)];
}
