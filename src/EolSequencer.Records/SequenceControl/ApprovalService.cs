using System.Globalization;
using EolSequencer.Model.Sequences;
using EolSequencer.Records.Administration;
using EolSequencer.Records.Canonical;
using EolSequencer.Records.People;

namespace EolSequencer.Records.SequenceControl;

/// <summary>
/// Sequence control: an engineer puts a text forward, another person approves it, and only then may it be used in production. A revision
/// is one text for ever.
/// </summary>
public sealed class ApprovalService
{
    /// <summary>The most vehicles that a trial names.</summary>
    public const int MostNamed = 500;

    private readonly Desk _desk;

    internal ApprovalService(Desk desk) => _desk = desk;

    /// <summary>Puts a sequence's text forward, and keeps it.</summary>
    /// <param name="sequence">As it was loaded; every file it was made from belongs to it.</param>
    /// <param name="note">What changed, and why.</param>
    public Outcome<SequenceDraft> Submit(SignedIn by, CheckedSequence sequence, string note) => _desk.Change<SequenceDraft>("submit a sequence", by, [Role.Engineer], TextRules.Text("note", note), turn =>
    {
        var hash = ContentHash.Of(sequence.Sources);
        if (turn.Drafts.Where("hash", hash) is [var same, ..]) return Refused.AgainstRule($"this text was put forward already, as {same.Id} by {same.By}");
        if (OtherText(turn, sequence.Id, sequence.Revision, hash) is { } other) return other;
        var id = Id("draft", turn.Drafts.Count);
        foreach (var source in sequence.Sources) turn.KeepSource(source);
        var files = sequence.Sources.Select(source => new DraftFile(source.Path, source.Hash));
        turn.Append(new SequenceSubmitted(id, sequence.Id, sequence.Revision, sequence.VehicleType.Id, sequence.StationKind, hash, [.. files], note), by.Badge);
        return SequenceDraft.Of(turn.Drafts.Find(id)!, []);
    });

    /// <summary>Approves a draft; not by the person who put it forward. The same draft may be approved again, say for all after a trial.</summary>
    /// <param name="draft">Id of the draft.</param>
    public Outcome<Approval> Give(SignedIn by, string draft, ApprovalScope scope, string reason) => _desk.Change<Approval>("approve a sequence", by, [Role.Engineer, Role.Quality], Fault(draft, scope, reason), turn =>
    {
        if (turn.Drafts.Find(draft) is not { } row) return Refused.Unknown($"there is no draft '{draft}'; 'eol approve list' shows them");
        if (row.By == by.Badge) return Refused.NotAllowed($"{draft} was put forward by {by.Name}; a second person approves it");
        var submitted = row.Submitted;
        if (OtherText(turn, submitted.Sequence, submitted.Revision, row.Hash) is { } other) return other;
        if (scope.From < turn.Now) return Refused.AgainstRule($"{UtcText.Of(scope.From.Value)} is over; an approval is in force from now on or from a moment to come");
        if (scope.FromVehicle is { } first && InForce.HasBegun(turn, first, submitted.StationKind, scope.Station))
        {
            return Refused.AgainstRule($"{first} has had its run there already; name a vehicle that is to come, or a moment");
        }

        var id = Id("approval", turn.Approvals.Count);
        turn.Append(
            new SequenceApproved(
                id, draft, submitted.Sequence, submitted.Revision, submitted.VehicleType, submitted.StationKind, row.Hash, reason, UtcText.Of(scope.From ?? turn.Now), scope.Vins,
                scope.Station, scope.FromVehicle),
            by.Badge);
        return Approval.Of(turn.Approvals.Find(id)!);
    });

    /// <summary>Withdraws an approval. What was in force before it is in force again, unless it was withdrawn too.</summary>
    public Outcome<Approval> Withdraw(SignedIn by, string id, string reason) => _desk.Change<Approval>("withdraw an approval", by, [Role.Engineer, Role.Quality], TextRules.Id("approval", id) ?? TextRules.Text("reason", reason), turn =>
    {
        if (turn.Approvals.Find(id) is not { } approval) return Refused.Unknown($"there is no approval '{id}'; 'eol approve list' shows them");
        if (approval.State == ApprovalRow.IsWithdrawn) return Refused.AgainstRule($"'{id}' was withdrawn already: {approval.Withdrawn}");
        turn.Append(new ApprovalWithdrawn(id, reason), by.Badge);
        return Approval.Of(turn.Approvals.Find(id)!);
    });

    private static string Id(string what, int known) => string.Create(CultureInfo.InvariantCulture, $"{what}-{known + 1:000000}");

    /// <summary>A revision that was once approved with another text cannot mean this one too.</summary>
    private static Refused? OtherText(IActTurn turn, string sequence, int revision, string hash) =>
        turn.Approvals.All().FirstOrDefault(one => one.Approved.Sequence == sequence && one.Approved.Revision == revision && one.Approved.Hash != hash) is { } other
            ? Refused.AgainstRule($"revision {revision} of '{sequence}' was approved with another text ({Approval.Short(other.Approved.Hash)}, {other.Id}); count its revision up, also when only a file that it uses has changed")
            : null;

    private static Refused? Fault(string draft, ApprovalScope scope, string reason)
    {
        if ((TextRules.Id("draft", draft) ?? TextRules.Text("reason", reason)) is { } fault) return fault;
        if (scope.Vins.Length > MostNamed) return Refused.Malformed($"{scope.Vins.Length} vehicles are named, {MostNamed} are the most");
        if (scope is { FromVehicle: not null, From: not null }) return Refused.Malformed("it begins either with a vehicle or at a moment; name one of the two");
        if (scope is { FromVehicle: not null, IsTrial: true }) return Refused.Malformed("a trial is for the vehicles that it names; a first vehicle is for all that follow; name one of the two");
        if (scope.Station is { } station && TextRules.Id("station", station) is { } noStation) return noStation;
        if (scope.FromVehicle is { } first && TextRules.Vin(first) is { } noFirst) return noFirst;
        return scope.Vins.Select(TextRules.Vin).FirstOrDefault(wrong => wrong is not null);
    }
}
