using System.Collections.Immutable;

namespace EolSequencer.Records.Release;

/// <summary>A vehicle that was run and is not released.</summary>
/// <param name="Since">When its first run that counts began, UTC.</param>
/// <param name="Last">When its newest run began, UTC.</param>
/// <param name="State"><c>returned</c> when it was released before; null: it never was.</param>
/// <param name="Obstacles">What keeps it; empty: only the signature of quality.</param>
public sealed record WaitingVehicle(string Vin, string VehicleType, string Order, DateTimeOffset Since, DateTimeOffset Last, string? State, ImmutableArray<Obstacle> Obstacles);

/// <summary>Vehicles that wait for their release.</summary>
/// <param name="InAll">How many there are.</param>
/// <param name="Vehicles">The first of them, who waits longest first.</param>
public sealed record ReleaseBoard(int InAll, ImmutableArray<WaitingVehicle> Vehicles);
