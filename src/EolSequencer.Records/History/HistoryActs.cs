using System.Collections.Immutable;
using EolSequencer.Records.Administration;

namespace EolSequencer.Records.History;

/// <summary>A vehicle that was released is run again: it is here, whatever was signed.</summary>
internal sealed record VehicleReturned(string Vin, string Run) : Act;

/// <summary>A run begins with another order for its vehicle than the run before it had.</summary>
/// <param name="Before">The run before.</param>
/// <param name="Changed">What differs, for people: <c>drive: 'fwd' → 'awd'</c>; the most important ones.</param>
internal sealed record OrderChanged(string Vin, string Run, string Before, ImmutableArray<string> Changed) : Act;
