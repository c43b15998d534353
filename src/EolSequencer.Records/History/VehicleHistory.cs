using System.Collections.Immutable;
using System.Text.Json;
using Dapper;
using EolSequencer.Model.Events;
using EolSequencer.Model.Vehicles;
using EolSequencer.Records.Canonical;
using EolSequencer.Records.Correcting;
using EolSequencer.Records.Nonconformities;
using EolSequencer.Records.Parts;
using EolSequencer.Records.Reading;
using EolSequencer.Records.Sqlite;
using EolSequencer.Records.Writing;

namespace EolSequencer.Records.History;

/// <summary>What vehicles have come to, read from their runs. From any thread; every call is short.</summary>
/// <remarks>Trouble with the record itself is a <see cref="RecordFault"/>.</remarks>
public sealed class VehicleHistory
{
    private readonly RecordFiles _files;
    private readonly RecordOptions _options;

    internal VehicleHistory(RecordFiles files, RecordOptions options) => (_files, _options) = (files, options);

    /// <summary>A vehicle at every station kind; none when it was never tested.</summary>
    /// <param name="vin">Identification number, exactly; one that was corrected gives the vehicle that it was corrected to.</param>
    /// <param name="mode">Runs that count, or rehearsals; never both.</param>
    public VehicleState Of(string vin, RunMode mode = RunMode.Production) => RecordFault.Guard(_files, () =>
    {
        using var connection = RecordConnection.ForReading(_files.Database, _options);
        connection.HoldMoment();
        return Of(connection, vin, mode);
    });

    /// <summary>How a vehicle stands that is about to be run so that it counts.</summary>
    public VehicleArrival Arrival(Order order) => RecordFault.Guard(_files, () =>
    {
        using var connection = RecordConnection.ForReading(_files.Database, _options);
        connection.HoldMoment();
        return VehicleArrival.Of(new SqliteTables(connection), order);
    });

    internal static VehicleState Of(RecordConnection connection, string vin, RunMode mode)
    {
        var tables = new SqliteTables(connection);
        var trail = new VinTrail(tables.Corrections);
        var vins = mode == RunMode.Production ? trail.All(vin) : [vin];
        var runs = Runs(connection, "vin IN @vins AND mode = @mode", new { vins, mode = RunBegunForm.WordOf(mode) });
        var whole = runs.Where(run => !run.Partial).GroupBy(run => run.StationKind, StringComparer.Ordinal).Select(kind => kind.MaxBy(run => run.Id)!).OrderBy(run => run.Id);
        var conceded = vins.SelectMany(one => tables.Nonconformities.Where("vin", one)).Where(row => row is { State: NonconformityStates.Conceded, Finding: not null }).ToList();
        return new VehicleState(vins[0], [.. whole.Select(run => HistoryFold.Of(
            Found(connection, run),
            [.. runs.Where(retest => retest.RetestOf == run.Run && retest.Partial && retest.StationKind == run.StationKind).Select(retest => Found(connection, retest))],
            conceded.Where(row => row.Finding!.StationKind == run.StationKind).GroupBy(row => (row.Finding!.Step, row.Finding.Run)).ToDictionary(rows => rows.Key, rows => rows.First().Id)))], PartSerials.Marked(PartSerials.Of(connection, vins, mode)), mode == RunMode.Production ? [.. trail.Corrections(vin)] : []);
    }

    private static List<RunColumns> Runs(RecordConnection connection, string where, object values) =>
        connection.Connection.Query<RunColumns>($"SELECT {RunColumns.All} FROM run WHERE {where} ORDER BY id", values).AsList();

    private static RunFound Found(RecordConnection connection, RunColumns run)
    {
        var attempts = connection.Connection
            .Query<StepColumns>($"SELECT {StepColumns.All} FROM step WHERE id BETWEEN @from AND @to ORDER BY id", new { from = EventKey.Before(run.Id), to = EventKey.Last(run.Id) })
            .Select(row => row.ToSummary());
        var ended = run.EndedUtc is null ? null : LastEvent(connection, run.Id);
        return new RunFound(run.ToSummary(), [.. attempts], ended?.NotReached ?? [], ended?.NotCounted ?? []);
    }

    private static RunEnded LastEvent(RecordConnection connection, long run)
    {
        using var last = new Statement(connection.Connection.Handle!, "SELECT bytes FROM event WHERE id BETWEEN ? AND ? ORDER BY id DESC LIMIT 1");
        if (!last.Int(1, EventKey.Before(run)).Int(2, EventKey.Last(run)).Next()) throw new FormatException($"run row {run} has ended without an event");
        try
        {
            using var document = JsonDocument.Parse(last.Blob(0).ToArray());
            return RunEndedForm.Read(new Fields(document.RootElement), 0, 0);
        }
        catch (JsonException fault)
        {
            throw new FormatException(fault.Message, fault);
        }
    }
}
