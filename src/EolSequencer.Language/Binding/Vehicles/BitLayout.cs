using System.Collections.Immutable;
using EolSequencer.Model.Devices;

namespace EolSequencer.Language.Binding.Vehicles;

/// <summary>Where the values of a channel lie.</summary>
/// <param name="Bits">By index; the key is empty for a channel without index. Empty: nothing is said about bits.</param>
/// <param name="Names">The indexes in written order.</param>
/// <param name="Count">Bits of one value; null when nothing is said about bits.</param>
internal sealed record BitLayout(ImmutableDictionary<string, BitRange> Bits, ImmutableArray<string> Names, int? Count)
{
    /// <summary>Nothing is said about bits.</summary>
    public static BitLayout Whole { get; } = new(ImmutableDictionary.Create<string, BitRange>(StringComparer.Ordinal), [], null);
}
