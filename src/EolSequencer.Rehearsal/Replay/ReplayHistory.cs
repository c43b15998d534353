using EolSequencer.Engine.Planning;
using EolSequencer.Model.Expressions;

namespace EolSequencer.Rehearsal.Replay;

/// <summary>What has become of results and traces so far: whether expressions may build on them.</summary>
internal sealed class ReplayHistory(PlacedPlan old, PlacedPlan now)
{
    private readonly HashSet<string> _undecidable = ReferenceEquals(old, now) ? [] : now.Steps.Select(step => step.Id).Where(id => old.Find(id) is null).ToHashSet(StringComparer.Ordinal);
    private readonly HashSet<string> _changed = new(StringComparer.Ordinal);

    /// <summary>Notes how a step came out.</summary>
    /// <param name="decided">False: the record does not tell.</param>
    /// <param name="changed">Its verdict or value differs from the recorded one.</param>
    public void Note(string id, bool decided, bool changed)
    {
        if (decided) _undecidable.Remove(id);
        else _undecidable.Add(id);
        if (changed) _changed.Add(id);
    }

    /// <summary>Why an expression cannot be evaluated from the record; null when it can.</summary>
    public string? Blocked(Expression expression, PlannedNode asker)
    {
        foreach (var use in expression.Results)
        {
            var id = use.Resolve(asker.Arguments, asker.Id);
            if (Holds(_undecidable, id)) return $"it builds on '{id}', which is undecidable";
        }

        foreach (var use in expression.Traces)
        {
            var (group, channel) = (use.Group.Resolve(asker.Arguments, asker.Id), use.Channel.Resolve(asker.Arguments));
            if (old.Capture(group, channel) is not { } kept) return $"'{group}' left no trace of {channel}";
            if (now.Capture(group, channel) is not { } wanted || wanted.Every != kept.Every) return $"'{group}' keeps {channel} otherwise";
        }

        return null;
    }

    /// <summary>Whether a result that an expression names has come out otherwise.</summary>
    public bool HasChanged(Expression expression, PlannedNode asker) =>
        expression.Results.Any(use => Holds(_changed, use.Resolve(asker.Arguments, asker.Id)));

    private static bool Holds(HashSet<string> ids, string id) =>
        ids.Count > 0 && (ids.Contains(id) || (id.EndsWith(']') && ids.Contains(id[..id.LastIndexOf('[')])));
}
