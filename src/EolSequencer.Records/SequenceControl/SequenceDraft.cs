using System.Collections.Immutable;

namespace EolSequencer.Records.SequenceControl;

/// <summary>A sequence's text that was put forward for approval; it is in force nowhere before somebody else approves it.</summary>
/// <param name="Hash">Of all its files, see <see cref="ContentHash"/>.</param>
/// <param name="By">Badge of who put it forward.</param>
/// <param name="Approvals">Ids of the approvals that it was given, withdrawn ones too, oldest first.</param>
public sealed record SequenceDraft(
    string Id, string Sequence, int Revision, string VehicleType, string StationKind, string Hash, ImmutableArray<DraftFile> Files, string Note, string? By,
    ImmutableArray<string> Approvals)
{
    internal static SequenceDraft Of(DraftRow row, IEnumerable<ApprovalRow> approvals)
    {
        var submitted = row.Submitted;
        return new SequenceDraft(
            row.Id, submitted.Sequence, submitted.Revision, submitted.VehicleType, submitted.StationKind, row.Hash, submitted.Files, submitted.Note, row.By,
            [.. approvals.Where(one => one.Approved.Draft == row.Id).Select(one => one.Id)]);
    }
}
