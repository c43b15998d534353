using System.Collections.Immutable;
using EolSequencer.Model.Sequences;
using EolSequencer.Records.Administration;

namespace EolSequencer.Records.SequenceControl;

/// <summary>What was put forward and approved. From any thread.</summary>
public sealed class ApprovalReader
{
    private readonly IActReader _record;

    internal ApprovalReader(IActReader record) => _record = record;

    /// <summary>Every text that was put forward, oldest first.</summary>
    public ImmutableArray<SequenceDraft> Drafts() => _record.Read(view =>
    {
        var approvals = view.Approvals.All();
        return view.Drafts.All().Select(row => SequenceDraft.Of(row, approvals)).ToImmutableArray();
    });

    /// <summary>Every approval, oldest first.</summary>
    /// <param name="all">True: withdrawn ones too.</param>
    public ImmutableArray<Approval> List(bool all = false) => _record.Read(view =>
        (all ? view.Approvals.All() : view.Approvals.Where("state", ApprovalRow.IsGiven)).Select(Approval.Of).ToImmutableArray());

    /// <summary>The approval in force for a vehicle at a station; null: none, and no production run may begin.</summary>
    public Approval? InForce(ApprovalQuery query) => _record.Read(view => SequenceControl.InForce.At(view, query) is { } row ? Approval.Of(row) : null);

    /// <summary>The newest approval by which a text may still be used for a vehicle, although another may be in force by now; null: none.</summary>
    /// <param name="hash">Of the text, see <see cref="ContentHash"/>.</param>
    public Approval? Standing(string hash, ApprovalQuery query) => _record.Read(view => SequenceControl.InForce.Standing(view, hash, query) is { } row ? Approval.Of(row) : null);

    /// <summary>The exact texts of a draft, as they were put forward; null when there is none with this id.</summary>
    public ImmutableArray<SourceCopy>? Texts(string draft) => _record.Read<ImmutableArray<SourceCopy>?>(view => view.Drafts.Find(draft) is { } row
        ? [.. row.Submitted.Files.Select(file => new SourceCopy(file.Path, file.Hash, view.SourceText(file.Hash) ?? throw new FormatException($"the text of {file.Path} of {draft} is missing")))]
        : null);
}
