using EolSequencer.Records.Administration;

namespace EolSequencer.Records.SequenceControl;

/// <summary>What an act makes of drafts and approvals.</summary>
internal static class SequenceControlFold
{
    public static void Apply(Act act, string? by, IRows<DraftRow> drafts, IRows<ApprovalRow> approvals)
    {
        switch (act)
        {
            case SequenceSubmitted submitted:
                drafts.Put(submitted.Id, new DraftRow(submitted.Id, submitted.Hash, submitted, by));
                break;
            case SequenceApproved approved:
                approvals.Put(approved.Id, new ApprovalRow(approved.Id, ApprovalRow.IsGiven, approved, by));
                break;
            case ApprovalWithdrawn withdrawn when approvals.Find(withdrawn.Id) is { } approval:
                approvals.Put(withdrawn.Id, approval with { State = ApprovalRow.IsWithdrawn, Withdrawn = withdrawn.Reason });
                break;
        }
    }
}
