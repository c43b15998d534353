using System.Collections.Immutable;
using EolSequencer.Model.Judging;

namespace EolSequencer.Model.Events;

/// <summary>
/// The state of a run as its events tell it: what screens and reports are made from. Feed it the events in order; it
/// never asks anybody else.
/// </summary>
public sealed class RunFold
{
    private readonly Dictionary<string, Judged> _last = new(StringComparer.Ordinal);
    private readonly Dictionary<string, Verdict> _first = new(StringComparer.Ordinal);
    private readonly List<string> _order = [];
    private readonly Dictionary<(string Group, string Channel), SeriesRecorded> _traces = [];
    private readonly HashSet<string> _notNeeded = new(StringComparer.Ordinal);

    /// <summary>The first event; null before it.</summary>
    public RunBegun? Begun { get; private set; }

    /// <summary>The last event; null while the run goes on or when it broke off.</summary>
    public RunEnded? Ended { get; private set; }

    /// <summary>Under which conditions it is made; empty before they are read, and where the sequence names none.</summary>
    public ImmutableArray<Condition> Conditions { get; private set; } = [];

    /// <summary>Why the run was stopped; null when it was not.</summary>
    public Stopped? Stopped { get; private set; }

    /// <summary>Monotonic time of the newest event.</summary>
    public TimeSpan At { get; private set; }

    /// <summary>How many steps have been judged or found not needed.</summary>
    public int Done => _order.Count + _notNeeded.Count;

    /// <summary>The last attempt of each step, in the order in which the steps were first judged.</summary>
    public IEnumerable<Judged> Results => _order.Select(step => _last[step]);

    /// <summary>Steps whose <c>only-if</c> was false at their turn.</summary>
    public IReadOnlyCollection<string> NotNeeded => _notNeeded;

    /// <summary>The traces of captured groups, those of the last attempt, in the order in which they were first recorded.</summary>
    public IReadOnlyCollection<SeriesRecorded> Traces => _traces.Values;

    /// <summary>True when every step that was judged passed, or judged nothing, at its first attempt.</summary>
    public bool IsFirstTimeThrough => _first.Values.All(verdict => verdict <= Verdict.Pass);

    /// <summary>Takes the next event.</summary>
    public void Add(RunEvent next)
    {
        At = TimeSpan.FromMicroseconds(next.At);
        switch (next)
        {
            case RunBegun begun: Begun = begun; break;
            case ConditionsRead read: Conditions = read.Conditions; break;
            case RunEnded ended: Ended = ended; break;
            case Stopped stopped: Stopped ??= stopped; break;
            case SeriesRecorded { Capture: not null } trace: _traces[(trace.Step, trace.Channel)] = trace; break;
            case NotNeeded notNeeded: _notNeeded.Add(notNeeded.Step); break;
            case Judged judged:
                if (_last.TryAdd(judged.Step, judged))
                {
                    _order.Add(judged.Step);
                    _first[judged.Step] = judged.Counted;
                }

                _last[judged.Step] = judged;
                break;
        }
    }

    /// <summary>The fold of many events.</summary>
    public static RunFold Of(IEnumerable<RunEvent> events)
    {
        var fold = new RunFold();
        foreach (var next in events) fold.Add(next);
        return fold;
    }
}
