using EolSequencer.Records.Correcting;
using EolSequencer.Records.Holds;
using EolSequencer.Records.Nonconformities;
using EolSequencer.Records.People;
using EolSequencer.Records.Release;
using EolSequencer.Records.SequenceControl;

namespace EolSequencer.Records.Administration;

/// <summary>Everything that is folded from acts.</summary>
internal interface IActTables
{
    IRows<PersonRow> People { get; }

    IRows<NonconformityRow> Nonconformities { get; }

    IRows<HoldRow> Holds { get; }

    IRows<ReleaseRow> Releases { get; }

    IRows<VinCorrectionRow> Corrections { get; }

    IRows<DraftRow> Drafts { get; }

    IRows<ApprovalRow> Approvals { get; }
}
