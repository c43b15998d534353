using System.Collections.Immutable;
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
}
