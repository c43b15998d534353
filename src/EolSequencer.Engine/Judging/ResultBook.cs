using EolSequencer.Model.Expressions;
using EolSequencer.Model.Judging;
using EolSequencer.Model.Traces;

namespace EolSequencer.Engine.Judging;

/// <summary>What each step has come to so far: the last attempt counts.</summary>
internal sealed class ResultBook
{
    private readonly Dictionary<string, Entry> _entries = new(512, StringComparer.Ordinal);
    private readonly Dictionary<(string Group, string Channel), Trace> _traces = [];

    /// <summary>The newest result of a step or of one index of it; null when it has none.</summary>
    public ResultView? Find(string id) => _entries.GetValueOrDefault(id)?.View;

    /// <summary>Which attempt of a step begins now, from 1.</summary>
    public int NextAttempt(string id) => ++EntryOf(id).Attempts;

    /// <summary>How many attempts of a step have begun.</summary>
    public int AttemptsOf(string id) => _entries.GetValueOrDefault(id)?.Attempts ?? 0;

    /// <summary>A step has been judged.</summary>
    public void Judge(string id, ResultView view)
    {
        var entry = EntryOf(id);
        (entry.View, entry.Counted) = (view, view.Verdict);
    }

    /// <summary>One index of a step that read a whole channel.</summary>
    public void NoteIndex(string id, string index, ResultView view) => EntryOf($"{id}[{index}]").View = view;

    /// <summary>A group has been captured; the trace of its last attempt counts.</summary>
    public void NoteTrace(string group, Trace trace) => _traces[(group, trace.Channel)] = trace;

    /// <summary>The newest trace of a channel over a group; null when it has none.</summary>
    public Trace? FindTrace(string group, string channel) => _traces.GetValueOrDefault((group, channel));

    /// <summary>A step was not needed: it stands in no roll-up.</summary>
    public void NoteNotNeeded(string id) => EntryOf(id).IsNotNeeded = true;

    /// <summary>A step begins anew in a further attempt of its group: what it had come to does not count any more.</summary>
    public void Forget(string id)
    {
        if (_entries.GetValueOrDefault(id) is { } entry) (entry.View, entry.Counted, entry.IsNotNeeded) = (null, null, false);
    }

    /// <summary>True when the step has neither been judged nor been found not needed.</summary>
    public bool IsOpen(string id) => _entries.GetValueOrDefault(id) is not { } entry || (entry.Counted is null && !entry.IsNotNeeded);

    /// <summary>The counted verdict of a step; inconclusive when it was not reached, null when it was not needed.</summary>
    public Verdict? Counted(string id) => _entries.GetValueOrDefault(id) switch
    {
        { Counted: { } verdict } => verdict,
        { IsNotNeeded: true } => null,
        _ => Verdict.Inconclusive,
    };

    private Entry EntryOf(string id)
    {
        if (!_entries.TryGetValue(id, out var entry)) _entries[id] = entry = new Entry();
        return entry;
    }

    private sealed class Entry
    {
        public ResultView? View { get; set; }
        public Verdict? Counted { get; set; }
        public int Attempts { get; set; }
        public bool IsNotNeeded { get; set; }
    }
}
