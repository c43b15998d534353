using System.Collections.Concurrent;
using System.Text;
using EolSequencer.Model.Events;
using EolSequencer.Model.Sequences;

namespace EolSequencer.Rehearsal.Replay;

/// <summary>A checked sequence to judge by, with what is worked out once for many runs. May be used from several threads.</summary>
public sealed class Revision(CheckedSequence sequence)
{
    /// <summary>Kinds of vehicles whose plans are kept; more are planned each time anew.</summary>
    private const int MostPairs = 500;

    private readonly ConcurrentDictionary<(Revision Old, string Vehicle), PlanPair> _pairs = [];
    private readonly bool _vinMatters = VinInPlan.Matters(sequence);

    public CheckedSequence Sequence => sequence;

    /// <summary>What this revision and an earlier one plan for the vehicle of a run.</summary>
    internal PlanPair PairFor(Revision old, RunBegun begun)
    {
        var key = (old, KeyOf(begun, _vinMatters || old._vinMatters));
        if (_pairs.TryGetValue(key, out var known)) return known;
        var now = PlanFor(begun);
        var pair = new PlanPair(old, ReferenceEquals(old, this) ? now : old.PlanFor(begun), this, now);
        if (_pairs.Count < MostPairs) _pairs[key] = pair;
        return pair;
    }

    private PlacedPlan PlanFor(RunBegun begun) => PlacedPlan.Of(sequence, begun.Order, begun.OnlySteps);

    /// <summary>Vehicles with the same key have the same plan.</summary>
    private static string KeyOf(RunBegun begun, bool withVin)
    {
        var key = new StringBuilder(1024);
        if (withVin) key.Append(begun.Order.Vin.Text);
        foreach (var (name, value) in begun.Order.Options) key.Append(name).Append('=').Append(value).Append('\n');
        foreach (var (name, value) in begun.Order.Facts) key.Append(name).Append('=').Append(value).Append('\n');
        foreach (var only in begun.OnlySteps) key.Append(only).Append('\n');
        return key.ToString();
    }
}
