using EolSequencer.Model.Expressions;

namespace EolSequencer.Model.Plants;

/// <summary>A station kind on a vehicle's way.</summary>
/// <param name="When">The vehicles that must pass it, by their options and order; null: all.</param>
public sealed record RouteStop(string StationKind, Expression? When);
