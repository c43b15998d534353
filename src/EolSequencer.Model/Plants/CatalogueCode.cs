using System.Collections.Immutable;
using EolSequencer.Model.Texts;

namespace EolSequencer.Model.Plants;

/// <summary>A nonconformity of the plant's catalogue.</summary>
/// <param name="Title">What people call it.</param>
/// <param name="Where">The places that it may have; empty: any.</param>
public sealed record CatalogueCode(string Code, LocalText Title, ImmutableArray<string> Where)
{
    /// <summary>Whether it may be at a place.</summary>
    public bool MayBeAt(string place) => Where.IsEmpty || Where.Contains(place);
}
