using System.Collections.Immutable;

namespace EolSequencer.Records.Nonconformities;

/// <summary>A nonconformity of a vehicle.</summary>
/// <param name="State"><c>open</c>, <c>reworked</c>, <c>repaired</c>, <c>wants-concession</c>, <c>closed</c> or <c>conceded</c>.</param>
/// <param name="StationKind">Where a step found it; null when a person did.</param>
/// <param name="Value">What the step found last, exactly as recorded.</param>
/// <param name="Window">What was expected.</param>
/// <param name="Note">What a person saw.</param>
/// <param name="RepairedBy">Badge of who reworked or repaired it last.</param>
/// <param name="Concession">Why it may stay.</param>
public sealed record Nonconformity(
    string Id, string Vin, string State, string Code, string? StationKind, string? Step, string? Run, string? Value, string? Unit, string? Window,
    string? Picture, string? Place, string? Note, string? OpenedBy, string? RepairedBy, ImmutableArray<FittedPart> Parts, string? Concession)
{
    /// <summary>Whether it keeps the vehicle from being released.</summary>
    public bool IsOpen => State is not (NonconformityStates.Closed or NonconformityStates.Conceded);

    internal static Nonconformity Of(NonconformityRow row) => new(
        row.Id, row.Vin, row.State, row.Code, row.Finding?.StationKind, row.Finding?.Step, row.Finding?.Run, row.Finding?.Value, row.Finding?.Unit, row.Finding?.Window,
        row.Finding?.Picture, row.Place, row.Note, row.OpenedBy, row.RepairedBy, row.Parts, row.Concession);
}
