using EolSequencer.Model.Expressions;

namespace EolSequencer.Engine.Planning;

/// <summary>What does not apply to one vehicle, and why.</summary>
/// <param name="Id">Full id of the step, or of the turn of a loop, with loop values.</param>
/// <param name="When">The condition that is false.</param>
/// <param name="Arguments">Loop names and parameters it was decided with.</param>
public sealed record LeftOut(string Id, Expression When, Arguments Arguments);
