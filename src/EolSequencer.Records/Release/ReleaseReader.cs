using System.Collections.Immutable;
using EolSequencer.Model.Events;
using EolSequencer.Records.Administration;

namespace EolSequencer.Records.Release;

/// <summary>Which vehicles may leave. From any thread.</summary>
public sealed class ReleaseReader
{
    private readonly IActReader _record;

    internal ReleaseReader(IActReader record) => _record = record;

    /// <summary>Whether a vehicle may be released.</summary>
    /// <param name="route">The station kinds that it must pass, by its plant.</param>
    public Readiness Of(string vin, ImmutableArray<string> route) => _record.Read(view => Readiness.Of(view, vin, route));

    /// <summary>The vehicles that were run so that it counts and are not released: what keeps each of them, and who can act next.</summary>
    /// <param name="most">At most so many, from 1; who waits longest comes first.</param>
    /// <param name="routeOf">The station kinds that a vehicle must pass, by its newest run that counts.</param>
    public ReleaseBoard Board(int most, Func<RunBegun, ImmutableArray<string>> routeOf) => _record.Read(view => BoardReader.Read(view, most, routeOf));
}
