using System.Text.Json;
using Dapper;
using EolSequencer.Model.Events;
using EolSequencer.Records.Administration;
using EolSequencer.Records.Canonical;
using EolSequencer.Records.Nonconformities;
using EolSequencer.Records.Reading;
using EolSequencer.Records.Sqlite;
using EolSequencer.Records.Writing;

namespace EolSequencer.Records.History;

/// <summary>The runs of one vehicle, and what they come to at each station kind.</summary>
internal sealed class VehicleRuns
{
    private readonly RecordConnection _connection;
    private readonly List<RunColumns> _runs;
    private readonly ILookup<string, NonconformityRow> _conceded;

    /// <param name="vins">All numbers of the vehicle.</param>
    public VehicleRuns(RecordConnection connection, IActTables tables, IReadOnlyList<string> vins, RunMode mode)
    {
        _connection = connection;
        _runs = connection.Connection.Query<RunColumns>($"SELECT {RunColumns.All} FROM run WHERE vin IN @vins AND mode = @mode ORDER BY id", new { vins, mode = mode.Word() }).AsList();
        _conceded = tables.Nonconformities.OfVehicle(vins).Where(row => row is { State: NonconformityStates.Conceded, Finding: not null }).ToLookup(row => row.Finding!.StationKind);
    }

    /// <summary>Every step at every station kind, in the order their newest whole runs began.</summary>
    public IEnumerable<StationKindState> InFull() => Newest().Select(InFull);

    /// <summary>What speaks for or against the vehicle; only the steps of what did not pass are read.</summary>
    public IEnumerable<KindProgress> InShort() => Newest().Select(run => KindProgress.OfPassed(run.ToSummary(), RetestsOf(run).Any()) ?? KindProgress.Of(InFull(run)));

    private IEnumerable<RunColumns> Newest() => _runs.Where(run => !run.Partial).GroupBy(run => run.StationKind, StringComparer.Ordinal).Select(kind => kind.MaxBy(run => run.Id)!).OrderBy(run => run.Id);

    private IEnumerable<RunColumns> RetestsOf(RunColumns whole) => _runs.Where(run => run.RetestOf == whole.Run && run.Partial && run.StationKind == whole.StationKind);

    private StationKindState InFull(RunColumns whole) => HistoryFold.Of(
        Found(whole),
        [.. RetestsOf(whole).Select(Found)],
        _conceded[whole.StationKind].GroupBy(row => (row.Finding!.Step, row.Finding.Run)).ToDictionary(rows => rows.Key, rows => rows.First().Id));

    private RunFound Found(RunColumns run)
    {
        var attempts = _connection.Connection
            .Query<StepColumns>($"SELECT {StepColumns.All} FROM step WHERE id BETWEEN @from AND @to ORDER BY id", new { from = EventKey.Before(run.Id), to = EventKey.Last(run.Id) })
            .Select(row => row.ToSummary());
        var ended = run.EndedUtc is null ? null : LastEvent(run.Id);
        return new RunFound(run.ToSummary(), [.. attempts], ended?.NotReached ?? [], ended?.NotCounted ?? []);
    }

    private RunEnded LastEvent(long run)
    {
        using var last = new Statement(_connection.Connection.Handle!, "SELECT bytes FROM event WHERE id BETWEEN ? AND ? ORDER BY id DESC LIMIT 1");
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
