using EolSequencer.Records.SequenceControl;

namespace EolSequencer.Cli.Output;

/// <summary>Drafts and approvals on one line each.</summary>
internal static class ApprovalLines
{
    public static string Of(SequenceDraft draft) =>
        $"{draft.Id}: '{draft.Sequence}' revision {draft.Revision} for {draft.VehicleType} at {draft.StationKind} (text {Approval.Short(draft.Hash)}), by {draft.By}: {draft.Note}; "
        + (draft.Approvals.IsEmpty ? "waits for approval" : string.Join(", ", draft.Approvals));

    public static string Of(Approval approval) =>
        $"{approval.Id}: {approval.Draft}, '{approval.Sequence}' revision {approval.Revision} for {approval.VehicleType} at {approval.Scope.Station ?? approval.StationKind} (text {Approval.Short(approval.Hash)}) "
        + $"{(approval.Withdrawn is { } why ? $"is withdrawn: {why}" : $"is approved by {approval.By}: {approval.Reason}; {ScopeOf(approval.Scope)}")}";

    private static string ScopeOf(ApprovalScope scope) =>
        scope.IsTrial ? $"a trial, from {At(scope)} for {string.Join(" ", scope.Vins)} only"
        : scope.FromVehicle is { } first ? $"from the first run of {first} on"
        : $"from {At(scope)} on";

    private static string At(ApprovalScope scope) => $"{scope.From:yyyy-MM-dd'T'HH:mm:ss'Z'}";
}
