using EolSequencer.Records.Sqlite;

namespace EolSequencer.Records.Verify;

/// <summary>The texts of everything that was put forward for approval are still there; that each is what its hash says is looked at elsewhere.</summary>
internal static class DraftFileCheck
{
    public static void Walk(RecordConnection connection, LedgerPicture ledger, FindingList findings)
    {
        var kept = connection.Prepare("SELECT count(*) FROM source WHERE hash = ?");
        foreach (var draft in ledger.Tables.Drafts.All())
        {
            foreach (var file in draft.Submitted.Files)
            {
                kept.Text(1, file.Hash).Next();
                if (kept.Int(0) == 0) findings.Add(FindingKind.Source, $"the text of {file.Path} of {draft.Id} ({file.Hash}) is missing");
                kept.Reset();
            }
        }
    }
}
