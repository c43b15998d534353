using EolSequencer.Records.Correcting;
using EolSequencer.Records.Holds;
using EolSequencer.Records.Nonconformities;
using EolSequencer.Records.People;
using EolSequencer.Records.Release;
using EolSequencer.Records.SequenceControl;

namespace EolSequencer.Records.Administration;

/// <summary>The tables in memory, folded again from the acts of a ledger.</summary>
internal sealed class MemoryTables : IActTables
{
    public MemoryRows<PersonRow> People { get; } = new(ActJson.Default.PersonRow);

    public MemoryRows<NonconformityRow> Nonconformities { get; } = new(ActJson.Default.NonconformityRow);

    public MemoryRows<HoldRow> Holds { get; } = new(ActJson.Default.HoldRow);

    public MemoryRows<ReleaseRow> Releases { get; } = new(ActJson.Default.ReleaseRow);

    public MemoryRows<VinCorrectionRow> Corrections { get; } = new(ActJson.Default.VinCorrectionRow);

    public MemoryRows<DraftRow> Drafts { get; } = new(ActJson.Default.DraftRow);

    public MemoryRows<ApprovalRow> Approvals { get; } = new(ActJson.Default.ApprovalRow);

    IRows<PersonRow> IActTables.People => People;

    IRows<NonconformityRow> IActTables.Nonconformities => Nonconformities;

    IRows<HoldRow> IActTables.Holds => Holds;

    IRows<ReleaseRow> IActTables.Releases => Releases;

    IRows<VinCorrectionRow> IActTables.Corrections => Corrections;

    IRows<DraftRow> IActTables.Drafts => Drafts;

    IRows<ApprovalRow> IActTables.Approvals => Approvals;

    /// <summary>Each table by its name in the database, with its rows as they must be.</summary>
    public IEnumerable<(string Table, IReadOnlyDictionary<string, string> Rows)> Named =>
    [
        ("person", People.Texts), ("nonconformity", Nonconformities.Texts), ("hold", Holds.Texts), ("vehicle_release", Releases.Texts), ("vin_correction", Corrections.Texts),
        ("sequence_draft", Drafts.Texts), ("sequence_approval", Approvals.Texts),
    ];
}
