using EolSequencer.Language.Diagnostics;
using EolSequencer.Model.Plants;
using EolSequencer.Model.Sequences;

namespace EolSequencer.Language.Loading;

/// <summary>What loading a sequence came to.</summary>
/// <param name="Sequence">The checked sequence; null when there is an error.</param>
/// <param name="Plant">The plant it belongs to; null when there is an error.</param>
/// <param name="Diagnostics">Everything found, by file, line and column; warnings and information may stand beside a sequence.</param>
/// <param name="LeftOut">How many findings are not among them because there were too many.</param>
public sealed record LoadResult(CheckedSequence? Sequence, Plant? Plant, IReadOnlyList<Diagnostic> Diagnostics, int LeftOut)
{
    /// <summary>True when the sequence may be run.</summary>
    public bool IsReady => Sequence is not null;
}
