using System.Collections.Immutable;
using Dapper;
using EolSequencer.Model.Events;
using EolSequencer.Model.Vehicles;
using EolSequencer.Records.Administration;
using EolSequencer.Records.Correcting;
using EolSequencer.Records.History;
using EolSequencer.Records.Holds;
using EolSequencer.Records.Nonconformities;
using EolSequencer.Records.Parts;
using EolSequencer.Records.People;
using EolSequencer.Records.Reading;
using EolSequencer.Records.Release;
using EolSequencer.Records.SequenceControl;
using EolSequencer.Records.Writing;

namespace EolSequencer.Records.Sqlite;

/// <summary>The tables folded from acts, as they are in the database.</summary>
internal class SqliteTables(RecordConnection connection) : IActView
{
    public IRows<PersonRow> People { get; } = new JsonRows<PersonRow>(connection, "person", ActJson.Default.PersonRow);

    public IRows<NonconformityRow> Nonconformities { get; } = new JsonRows<NonconformityRow>(connection, "nonconformity", ActJson.Default.NonconformityRow);

    public IRows<HoldRow> Holds { get; } = new JsonRows<HoldRow>(connection, "hold", ActJson.Default.HoldRow);

    public IRows<ReleaseRow> Releases { get; } = new JsonRows<ReleaseRow>(connection, "vehicle_release", ActJson.Default.ReleaseRow);

    public IRows<VinCorrectionRow> Corrections { get; } = new JsonRows<VinCorrectionRow>(connection, "vin_correction", ActJson.Default.VinCorrectionRow);

    private VinTrail Trail => new(Corrections);

    /// <summary>The numbers of the vehicle that a filter asks for; empty when it asks for none, or for rehearsals, which no correction touches.</summary>
    public IReadOnlyList<string> NumbersOf(RunFilter filter) => filter is { Vin: { } vin, Mode: not RunMode.Rehearsal } ? Trail.All(vin) : [];

    public ImmutableArray<KindProgress> Progress(IReadOnlyList<string> vins) => [.. new VehicleRuns(connection, this, vins, RunMode.Production).InShort()];

    public IRows<DraftRow> Drafts { get; } = new JsonRows<DraftRow>(connection, "sequence_draft", ActJson.Default.DraftRow);

    public IRows<ApprovalRow> Approvals { get; } = new JsonRows<ApprovalRow>(connection, "sequence_approval", ActJson.Default.ApprovalRow);

    public IReadOnlyList<string> NumbersNotReleased() => connection.Connection.Query<string>(
        """
        SELECT vin FROM run INDEXED BY run_counting WHERE mode = 'production' AND vin NOT IN (SELECT key FROM vehicle_release WHERE state = 'released')
        GROUP BY vin ORDER BY min(id)
        """).AsList();

    public IEnumerable<(PartSerial Here, PartSerial There)> SharedParts(IReadOnlyList<string> vins) => RecordedSerials.Shared(connection, Trail, vins);

    public IReadOnlyList<string> VehiclesWith(PartName part, string serial) => [.. RecordedSerials.Now(connection, Trail, part.Kind, serial).Where(one => part.At.Length == 0 || one.At == part.At).Select(one => one.Vin).Distinct()];

    public IEnumerable<RunBegun> RunsBegun(RunFilter filter) => RunBeginnings.Of(connection, filter, NumbersOf(filter));

    public string? SourceText(string hash)
    {
        var find = connection.Prepare("SELECT bytes FROM source WHERE hash = ?").Text(1, hash);
        return find.Next() ? SourceBytes.TextOf(find.Blob(0)) : null;
    }

    public string? SecretHash(string badge)
    {
        var find = connection.Prepare("SELECT hash FROM person_secret WHERE badge = ?").Text(1, badge);
        return find.Next() ? find.Text(0) : null;
    }
}
