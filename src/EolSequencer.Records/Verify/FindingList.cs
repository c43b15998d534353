using System.Collections.Immutable;

namespace EolSequencer.Records.Verify;

/// <summary>Collects findings; a damaged record has too many to keep them all.</summary>
internal sealed class FindingList
{
    private const int MostKept = 1000;

    private readonly ImmutableArray<Finding>.Builder _kept = ImmutableArray.CreateBuilder<Finding>();

    public long Count { get; private set; }

    public ImmutableArray<Finding> Kept => _kept.ToImmutable();

    public void Add(FindingKind kind, string text, string? run = null, long? number = null)
    {
        Count++;
        if (_kept.Count < MostKept) _kept.Add(new Finding(kind, run, number, text));
    }
}
