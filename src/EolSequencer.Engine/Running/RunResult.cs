using EolSequencer.Model.Judging;

namespace EolSequencer.Engine.Running;

/// <summary>What a run came to.</summary>
/// <param name="RollUp">Worst counted verdict and the numbers of each.</param>
/// <param name="Interrupted">True when it did not come to its end by itself.</param>
/// <param name="Fault">Why its record could not be kept; null when it was. Then nothing of it releases.</param>
public sealed record RunResult(RollUp RollUp, bool Interrupted, string? Fault);
