using System.Collections.Immutable;
using EolSequencer.Records.Administration;

namespace EolSequencer.Records.Holds;

/// <summary>The holds of a record. From any thread.</summary>
public sealed class HoldReader
{
    private readonly IActReader _record;

    internal HoldReader(IActReader record) => _record = record;

    /// <summary>Every hold, oldest first.</summary>
    /// <param name="all">True: those that were lifted too.</param>
    public ImmutableArray<Hold> List(bool all = false) => _record.Read(view =>
        (all ? view.Holds.All() : view.Holds.Where("state", HoldRow.IsPlaced)).Select(Hold.Of).ToImmutableArray());

    /// <summary>The vehicles that a query matches now, by number; those named one by one whether they were run or not.</summary>
    public ImmutableArray<string> Vehicles(HoldQuery query) => _record.Read(view => new HoldMatch(view, query).Vehicles().ToImmutableArray());
}
