using EolSequencer.Records.Correcting;
using EolSequencer.Records.Holds;
using EolSequencer.Records.Nonconformities;
using EolSequencer.Records.People;
using EolSequencer.Records.Release;
using EolSequencer.Records.SequenceControl;

namespace EolSequencer.Records.Administration;

/// <summary>What acts come to: the one way from an act to the tables, for writing and for checking.</summary>
internal static class ActFold
{
    public static void Apply(Act act, string? by, IActTables tables)
    {
        PersonFold.Apply(act, tables.People);
        NonconformityFold.Apply(act, by, tables.Nonconformities);
        HoldFold.Apply(act, tables.Holds);
        VinFold.Apply(act, by, tables.Corrections);
        ReleaseFold.Apply(act, by, tables.Releases, new VinTrail(tables.Corrections));
        SequenceControlFold.Apply(act, by, tables.Drafts, tables.Approvals);
    }
}
