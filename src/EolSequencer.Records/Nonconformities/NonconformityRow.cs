using System.Collections.Immutable;

namespace EolSequencer.Records.Nonconformities;

/// <summary>A nonconformity as the acts have left it.</summary>
/// <param name="Finding">What the step found last; null when a person found it.</param>
/// <param name="OpenedBy">Badge; null: by a run without one.</param>
/// <param name="RepairedBy">Badge of who reworked or repaired it last.</param>
/// <param name="Parts">Parts fitted by all repairs.</param>
/// <param name="Concession">Why it may stay.</param>
internal sealed record NonconformityRow(
    string Id, string Vin, string State, string Code, ImmutableArray<FittedPart> Parts, StepFinding? Finding = null, string? Place = null, string? Note = null,
    string? OpenedBy = null, string? RepairedBy = null, string? Concession = null)
{
    public bool IsOpen => State is not (NonconformityStates.Closed or NonconformityStates.Conceded);
}

/// <summary>The words for where a nonconformity stands.</summary>
internal static class NonconformityStates
{
    public const string Open = "open";

    /// <summary>Reworked, not shown to be good yet.</summary>
    public const string Reworked = "reworked";

    /// <summary>Repaired, not shown to be good yet.</summary>
    public const string Repaired = "repaired";

    /// <summary>Repaired and shown to be fit for use: it does not conform all the same.</summary>
    public const string WantsConcession = "wants-concession";

    public const string Closed = "closed";

    public const string Conceded = "conceded";
}
