using System.Collections.Immutable;
using EolSequencer.Records.Administration;

namespace EolSequencer.Records.Release;

/// <summary>A vehicle may leave (ISO 9000:2015, 3.12.7).</summary>
/// <param name="Route">The station kinds that it had to pass.</param>
/// <param name="Runs">The newest whole run at each of them.</param>
internal sealed record ReleaseSigned(string Vin, ImmutableArray<string> Route, ImmutableArray<string> Runs) : Act;
