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

namespace EolSequencer.Records.Sqlite;

/// <summary>The tables folded from acts, as they are in the database.</summary>
internal class SqliteTables(RecordConnection connection) : IActView
{
    public IRows<PersonRow> People { get; } = new JsonRows<PersonRow>(connection, "person", ActJson.Default.PersonRow);

    public IRows<NonconformityRow> Nonconformities { get; } = new JsonRows<NonconformityRow>(connection, "nonconformity", ActJson.Default.NonconformityRow);

    public IRows<HoldRow> Holds { get; } = new JsonRows<HoldRow>(connection, "hold", ActJson.Default.HoldRow);

    public IRows<ReleaseRow> Releases { get; } = new JsonRows<ReleaseRow>(connection, "vehicle_release", ActJson.Default.ReleaseRow);

    public IRows<VinCorrectionRow> Corrections { get; } = CorrectionsOf(connection);

    /// <summary>The numbers of the vehicle that a filter asks for; empty when it asks for none, or for rehearsals, which no correction touches.</summary>
    public static IReadOnlyList<string> NumbersOf(RecordConnection connection, RunFilter filter) =>
        filter is { Vin: { } vin, Mode: not RunMode.Rehearsal } ? TrailOf(connection).All(vin) : [];

    /// <summary>Which numbers speak of one vehicle.</summary>
    public static VinTrail TrailOf(RecordConnection connection) => new(CorrectionsOf(connection));

    public VehicleState Vehicle(string vin) => VehicleHistory.Of(connection, vin, RunMode.Production);

    public PartSerial? Elsewhere(PartSerial part) => RecordedSerials.Elsewhere(connection, part.Vin, new PartName(part.Part, part.At), part.Serial);

    public IReadOnlyList<string> VehiclesWith(PartName part, string serial) => [.. RecordedSerials.Now(connection, part.Kind, serial).Where(one => part.At.Length == 0 || one.At == part.At).Select(one => one.Vin).Distinct()];

    public IEnumerable<RunBegun> RunsBegun(RunFilter filter) => RunBeginnings.Of(connection, filter, NumbersOf(connection, filter));

    public string? SecretHash(string badge)
    {
        var find = connection.Prepare("SELECT hash FROM person_secret WHERE badge = ?").Text(1, badge);
        return find.Next() ? find.Text(0) : null;
    }

    private static JsonRows<VinCorrectionRow> CorrectionsOf(RecordConnection connection) => new(connection, "vin_correction", ActJson.Default.VinCorrectionRow);
}
