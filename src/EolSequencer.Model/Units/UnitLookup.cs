using System.Collections.Immutable;

namespace EolSequencer.Model.Units;

/// <summary>The answer of the unit table to a spelling.</summary>
public abstract record UnitLookup
{
    private UnitLookup() { }

    /// <summary>The spelling belongs to this unit.</summary>
    public sealed record Found(Unit Unit) : UnitLookup;

    /// <summary>The spelling belongs to no unit.</summary>
    /// <param name="Text">The spelling as it was given.</param>
    /// <param name="Candidates">
    /// Spellings that may have been meant, most likely first; empty when nothing is near. Where a change of case decides
    /// between prefixes, both are named, even one that the table does not hold.
    /// </param>
    /// <param name="Hint">What to write instead, as the second half of a message; never empty.</param>
    public sealed record Unknown(string Text, ImmutableArray<string> Candidates, string Hint) : UnitLookup;
}
