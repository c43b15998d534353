using EolSequencer.Model.Expressions;
using EolSequencer.Model.Judging;
using EolSequencer.Model.Traces;

namespace EolSequencer.Engine.Judging;

/// <summary>What each step has come to so far: the last attempt counts.</summary>
internal sealed class ResultBook
{
    private readonly Dictionary<string, ResultView> _views = new(StringComparer.Ordinal);
    private readonly Dictionary<string, Verdict> _counted = new(StringComparer.Ordinal);
    private readonly Dictionary<string, int> _attempts = new(StringComparer.Ordinal);
    private readonly Dictionary<(string Group, string Channel), Trace> _traces = [];
    private readonly HashSet<string> _notNeeded = new(StringComparer.Ordinal);

    /// <summary>The newest result of a step or of one index of it; null when it has none.</summary>
    public ResultView? Find(string id) => _views.GetValueOrDefault(id);

    /// <summary>Which attempt of a step begins now, from 1.</summary>
    public int NextAttempt(string id) => _attempts[id] = _attempts.GetValueOrDefault(id) + 1;

    /// <summary>A step has been judged.</summary>
    public void Judge(string id, ResultView view)
    {
        _views[id] = view;
        _counted[id] = view.Verdict;
    }

    /// <summary>One index of a step that read a whole channel.</summary>
    public void NoteIndex(string id, string index, ResultView view) => _views[$"{id}[{index}]"] = view;

    /// <summary>A group has been captured; the trace of its last attempt counts.</summary>
    public void NoteTrace(string group, Trace trace) => _traces[(group, trace.Channel)] = trace;

    /// <summary>The newest trace of a channel over a group; null when it has none.</summary>
    public Trace? FindTrace(string group, string channel) => _traces.GetValueOrDefault((group, channel));

    /// <summary>A step was not needed: it stands in no roll-up.</summary>
    public void NoteNotNeeded(string id) => _notNeeded.Add(id);

    /// <summary>A step begins anew in a further attempt of its group: what it had come to does not count any more.</summary>
    public void Forget(string id)
    {
        _views.Remove(id);
        _counted.Remove(id);
        _notNeeded.Remove(id);
    }

    /// <summary>True when the step has neither been judged nor been found not needed.</summary>
    public bool IsOpen(string id) => !_counted.ContainsKey(id) && !_notNeeded.Contains(id);

    /// <summary>The counted verdict of a step; inconclusive when it was not reached, null when it was not needed.</summary>
    public Verdict? Counted(string id) =>
        _counted.TryGetValue(id, out var verdict) ? verdict : _notNeeded.Contains(id) ? null : Verdict.Inconclusive;
}
