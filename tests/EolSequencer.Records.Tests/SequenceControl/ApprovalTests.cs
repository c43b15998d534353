using EolSequencer.Records.Administration;
using EolSequencer.Records.People;
using EolSequencer.Records.SequenceControl;
using EolSequencer.Records.Tests.Samples;
using EolSequencer.Records.Verify;

namespace EolSequencer.Records.Tests.SequenceControl;

/// <summary>What a vehicle is judged by was read and allowed by a second person, and stands in the record word for word.</summary>
public sealed class ApprovalTests : IDisposable
{
    private readonly Crew _crew = new(("opal", [Role.Operator]), ("edda", [Role.Engineer]), ("egon", [Role.Engineer]), ("quinn", [Role.Quality]));

    private ApprovalService Office => _crew.Office.Approvals;

    private ApprovalReader Record => _crew.Folder.OpenToRead().Approvals;

    [Fact]
    public void A_text_is_put_forward_by_one_and_approved_by_another()
    {
        var sequence = SampleSequence.Of(1);

        var draft = Crew.Done(Office.Submit(_crew["edda"], sequence, "first issue"));

        Assert.Equal(("draft-000001", "startup", 1, "orrin", "startup", "edda"), (draft.Id, draft.Sequence, draft.Revision, draft.VehicleType, draft.StationKind, draft.By));
        Assert.Equal(ContentHash.Of(sequence.Sources), draft.Hash);
        Assert.Contains("second person", _crew.Refused(Refusal.NotAllowed, () => Office.Give(_crew["edda"], draft.Id, ApprovalScope.Everywhere, "read")));
        var approval = Crew.Done(Office.Give(_crew["quinn"], draft.Id, ApprovalScope.Everywhere, "read"));
        Assert.Equal(("approval-000001", draft.Hash, "quinn", null), (approval.Id, approval.Hash, approval.By, approval.Withdrawn));
        Assert.Equal([approval.Id], Assert.Single(Record.Drafts()).Approvals);
        Assert.Equal(["sequence-submitted", "sequence-approved"], _crew.Acts()[^2..]);
        _crew.AssertWhole();
    }

    [Fact]
    public void The_texts_are_kept_as_they_were_put_forward()
    {
        var sequence = SampleSequence.Of(1);
        Crew.Done(Office.Submit(_crew["edda"], sequence, "first issue"));

        Assert.Equal(sequence.Sources, Record.Texts("draft-000001")!.Value);
        Assert.Null(Record.Texts("draft-000002"));
    }

    [Fact]
    public void Another_engineer_may_approve_and_an_operator_or_an_administrator_may_not()
    {
        _crew.Refused(Refusal.NotAllowed, () => Office.Submit(_crew["opal"], SampleSequence.Of(1), "mine"));
        _crew.Refused(Refusal.NotAllowed, () => Office.Submit(_crew["quinn"], SampleSequence.Of(1), "mine"));
        Crew.Done(Office.Submit(_crew["edda"], SampleSequence.Of(1), "first issue"));

        _crew.Refused(Refusal.NotAllowed, () => Office.Give(_crew["opal"], "draft-000001", ApprovalScope.Everywhere, "read"));
        _crew.Refused(Refusal.NotAllowed, () => Office.Give(_crew["adm"], "draft-000001", ApprovalScope.Everywhere, "read"));
        Crew.Done(Office.Give(_crew["egon"], "draft-000001", ApprovalScope.Everywhere, "read"));
        _crew.Refused(Refusal.NotAllowed, () => Office.Withdraw(_crew["opal"], "approval-000001", "wrong"));
    }

    [Fact]
    public void Who_was_disabled_or_lost_the_role_meanwhile_may_not()
    {
        Crew.Done(Office.Submit(_crew["edda"], SampleSequence.Of(1), "first issue"));
        var (quinn, egon) = (_crew["quinn"], _crew["egon"]);
        Crew.Done(_crew.Office.People.Disable(_crew["adm"], "quinn", "left"));
        Crew.Done(_crew.Office.People.SetRoles(_crew["adm"], "egon", [Role.Operator]));

        _crew.Refused(Refusal.NotAllowed, () => Office.Give(quinn, "draft-000001", ApprovalScope.Everywhere, "read"));
        _crew.Refused(Refusal.NotAllowed, () => Office.Give(egon, "draft-000001", ApprovalScope.Everywhere, "read"));
    }

    [Fact]
    public void The_same_text_is_put_forward_once_and_a_revision_is_one_text_for_ever()
    {
        Crew.Done(Office.Submit(_crew["edda"], SampleSequence.Of(1), "first issue"));
        Assert.Contains("as draft-000001 by edda", _crew.Refused(Refusal.AgainstRule, () => Office.Submit(_crew["egon"], SampleSequence.Of(1), "again")));
        Crew.Done(Office.Submit(_crew["edda"], SampleSequence.Of(1, "fragment: lamps_changed\n"), "before anything is approved, a revision may still change"));
        Crew.Done(Office.Give(_crew["quinn"], "draft-000001", ApprovalScope.Everywhere, "read"));

        Assert.Contains("count its revision up", _crew.Refused(Refusal.AgainstRule, () => Office.Give(_crew["quinn"], "draft-000002", ApprovalScope.Everywhere, "read")));
        Assert.Contains("count its revision up", _crew.Refused(Refusal.AgainstRule, () => Office.Submit(_crew["edda"], SampleSequence.Of(1, "fragment: other\n"), "a changed fragment")));
        Crew.Done(Office.Submit(_crew["edda"], SampleSequence.Of(2, "fragment: other\n"), "a changed fragment"));
    }

    [Fact]
    public void What_is_malformed_unknown_or_over_is_refused()
    {
        Crew.Done(Office.Submit(_crew["edda"], SampleSequence.Of(1), "first issue"));
        Give(Refusal.Malformed, ApprovalScope.Everywhere, draft: "../draft");
        Give(Refusal.Malformed, ApprovalScope.Everywhere, draft: "' OR 1=1 --");
        Give(Refusal.Unknown, ApprovalScope.Everywhere, draft: "draft-000009");
        Give(Refusal.Malformed, ApprovalScope.Everywhere, "");
        Give(Refusal.Malformed, ApprovalScope.Everywhere, new string('x', 1001));
        Give(Refusal.Malformed, ApprovalScope.Everywhere, "line\nline");
        Give(Refusal.Malformed, ApprovalScope.Everywhere with { Station = "a b" });
        Give(Refusal.Malformed, ApprovalScope.Everywhere with { FromVehicle = "x" });
        Give(Refusal.Malformed, ApprovalScope.Everywhere with { Vins = [SampleRun.Vin, "x"] });
        Give(Refusal.Malformed, ApprovalScope.Everywhere with { Vins = [.. Enumerable.Repeat(SampleRun.Vin, 501)] });
        Give(Refusal.Malformed, ApprovalScope.Everywhere with { FromVehicle = SampleRun.Vin, From = _crew.Clock.Now.AddDays(1) });
        Give(Refusal.Malformed, ApprovalScope.Everywhere with { FromVehicle = SampleRun.Vin, Vins = [SampleRun.Vin] });
        Give(Refusal.AgainstRule, ApprovalScope.Everywhere with { From = _crew.Clock.Now.AddTicks(-1) });
        _crew.Refused(Refusal.Malformed, () => Office.Submit(_crew["edda"], SampleSequence.Of(2), "\u001b[31mred"));
        _crew.Refused(Refusal.Malformed, () => Office.Withdraw(_crew["quinn"], "approval 1", "wrong"));
        _crew.Refused(Refusal.Unknown, () => Office.Withdraw(_crew["quinn"], "approval-000001", "wrong"));
    }

    [Fact]
    public void An_approval_is_withdrawn_once()
    {
        Crew.Done(Office.Submit(_crew["edda"], SampleSequence.Of(1), "first issue"));
        Crew.Done(Office.Give(_crew["quinn"], "draft-000001", ApprovalScope.Everywhere, "read"));

        Assert.Equal("misses a lamp", Crew.Done(Office.Withdraw(_crew["edda"], "approval-000001", "misses a lamp")).Withdrawn);

        Assert.Contains("misses a lamp", _crew.Refused(Refusal.AgainstRule, () => Office.Withdraw(_crew["quinn"], "approval-000001", "again")));
        Assert.Empty(Record.List());
        Assert.Single(Record.List(all: true));
        _crew.AssertWhole();
    }

    [Theory]
    [InlineData("UPDATE sequence_approval SET row = replace(row, '\"vins\":[]', '\"vins\":[\"9Z9RR1N42TF000017\"]')", FindingKind.Table, "sequence_approval 'approval-000001' is")]
    [InlineData("UPDATE sequence_draft SET row = replace(row, 'edda', 'egon')", FindingKind.Table, "the acts say")]
    [InlineData("DELETE FROM sequence_approval", FindingKind.Table, "sequence_approval 'approval-000001' is missing")]
    [InlineData("INSERT INTO sequence_approval SELECT 'approval-000002', row FROM sequence_approval", FindingKind.Table, "stands in the table and in no act")]
    [InlineData("DELETE FROM source WHERE CAST(bytes AS TEXT) LIKE 'fragment%'", FindingKind.Source, "the text of lamps.yaml of draft-000001")]
    [InlineData("UPDATE source SET bytes = CAST('fragment: easy' AS BLOB) WHERE CAST(bytes AS TEXT) LIKE 'fragment%'", FindingKind.Source, "has been changed")]
    public void What_is_read_must_say_what_the_acts_say(string sql, FindingKind kind, string text)
    {
        Crew.Done(Office.Submit(_crew["edda"], SampleSequence.Of(1), "first issue"));
        Crew.Done(Office.Give(_crew["quinn"], "draft-000001", ApprovalScope.Everywhere, "read"));
        _crew.AssertWhole();

        _crew.Folder.Tamper(sql);

        var report = _crew.Folder.OpenToRead().Verify();
        Assert.True(report.Findings.Any(finding => finding.Kind == kind && finding.Text.Contains(text, StringComparison.Ordinal)), string.Join('\n', report.Findings));
    }

    public void Dispose() => _crew.Dispose();

    private void Give(Refusal refusal, ApprovalScope scope, string reason = "read", string draft = "draft-000001") =>
        _crew.Refused(refusal, () => Office.Give(_crew["quinn"], draft, scope, reason));
}
