using System.Collections.Immutable;
using EolSequencer.Records.Administration;

namespace EolSequencer.Records.Holds;

/// <summary>Vehicles are kept back until the hold is lifted, those that match later too.</summary>
/// <param name="Matched">How many vehicles matched when it was placed.</param>
internal sealed record HoldPlaced(
    string Id, string Reason, int Matched, ImmutableArray<string> Vins, string? Fact = null, string? Value = null, string? From = null, string? Until = null,
    string? Station = null, string? Instrument = null, string? Program = null) : Act;

/// <summary>The vehicles of a hold may go.</summary>
internal sealed record HoldLifted(string Id, string Reason) : Act;
