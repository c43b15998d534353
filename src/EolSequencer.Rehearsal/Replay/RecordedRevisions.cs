using System.Collections.Concurrent;
using EolSequencer.Language.Diagnostics;
using EolSequencer.Language.Expressions;
using EolSequencer.Language.Loading;
using EolSequencer.Model.Events;

namespace EolSequencer.Rehearsal.Replay;

/// <summary>The sequences that recorded runs had, loaded from the texts in the record, each once. From any thread.</summary>
public sealed class RecordedRevisions(ExpressionCache cache)
{
    private readonly ConcurrentDictionary<string, Lazy<Loaded>> _loaded = new(StringComparer.Ordinal);

    /// <summary>What loading the texts of a run came to.</summary>
    /// <param name="Revision">Null when this version of the program does not accept them.</param>
    public sealed record Loaded(Revision? Revision, IReadOnlyList<Diagnostic> Diagnostics);

    /// <summary>The sequence of a run.</summary>
    public Loaded Of(RunBegun begun) =>
        _loaded.GetOrAdd(string.Join(' ', begun.Sources.Select(source => source.Hash)), _ => new Lazy<Loaded>(() => Load(begun))).Value;

    private Loaded Load(RunBegun begun)
    {
        var result = SequenceLoader.LoadRecorded(begun.Sources, begun.Sequence, cache);
        return new Loaded(result.Sequence is { } sequence ? new Revision(sequence) : null, result.Diagnostics);
    }
}
