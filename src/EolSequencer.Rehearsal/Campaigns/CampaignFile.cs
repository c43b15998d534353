using System.Collections.Immutable;
using Dapper;
using EolSequencer.Engine.Planning;
using EolSequencer.Model.Judging;
using EolSequencer.Model.Sequences;
using Microsoft.Data.Sqlite;

namespace EolSequencer.Rehearsal.Campaigns;

/// <summary>A campaign in one SQLite file: what it is about and what has come of it so far. Results are added until it is whole.</summary>
public sealed class CampaignFile : IDisposable
{
    /// <summary>The form of the file; a file of another form is refused.</summary>
    public const int Form = 1;

    // "eolc"; tells a campaign from any other database.
    private const int ApplicationId = 0x656F6C63;

    private const string Tables = """
        CREATE TABLE head (plant TEXT, station TEXT, sequence TEXT, revision INTEGER, sources TEXT, cycle_us INTEGER, settings TEXT, jobs INTEGER, program TEXT, command TEXT) STRICT;
        CREATE TABLE vehicle (number INTEGER PRIMARY KEY, options TEXT NOT NULL, order_text TEXT NOT NULL) STRICT;
        CREATE TABLE step (vehicle INTEGER NOT NULL, place INTEGER NOT NULL, id TEXT NOT NULL, class TEXT NOT NULL, judged INTEGER NOT NULL, PRIMARY KEY (vehicle, place)) STRICT, WITHOUT ROWID;
        CREATE TABLE fault (text TEXT PRIMARY KEY, place INTEGER NOT NULL, point TEXT NOT NULL, kind TEXT NOT NULL, class TEXT NOT NULL, effect TEXT NOT NULL, person INTEGER NOT NULL) STRICT;
        CREATE TABLE result (job INTEGER PRIMARY KEY, vehicle INTEGER NOT NULL, seed INTEGER NOT NULL, first TEXT, second TEXT, verdict TEXT NOT NULL, releases INTEGER NOT NULL, took_us INTEGER NOT NULL, trouble TEXT) STRICT;
        CREATE TABLE deviation (job INTEGER NOT NULL, step TEXT NOT NULL, counted TEXT NOT NULL, at_us INTEGER NOT NULL, PRIMARY KEY (job, step)) STRICT, WITHOUT ROWID;
        CREATE TABLE number (job INTEGER NOT NULL, step TEXT NOT NULL, value REAL NOT NULL, low REAL, high REAL, PRIMARY KEY (job, step)) STRICT, WITHOUT ROWID;
        """;

    private readonly SqliteConnection _connection;

    private CampaignFile(SqliteConnection connection, CampaignHead head) => (_connection, Head) = (connection, head);

    public CampaignHead Head { get; }

    /// <summary>Runs whose results are in it.</summary>
    public IReadOnlySet<int> Done => _connection.Query<int>("SELECT job FROM result").ToHashSet();

    /// <summary>The order of a vehicle, as the text of an order file.</summary>
    public string OrderOf(int vehicle) => _connection.QuerySingle<string>("SELECT order_text FROM vehicle WHERE number = @vehicle", new { vehicle });

    internal SqliteConnection Connection => _connection;

    /// <summary>Opens a campaign that is there, whatever it is about.</summary>
    /// <returns>The file, or why it is none.</returns>
    public static (CampaignFile? File, string? Why) Open(string path)
    {
        if (Directory.Exists(path)) return (null, $"{path} is a folder; a campaign is a file");
        if (!File.Exists(path)) return (null, $"there is no file {path}");
        SqliteConnection? connection = null;
        try
        {
            connection = Connect(path, SqliteOpenMode.ReadWrite);
            if (connection.ExecuteScalar<int>("PRAGMA application_id") != ApplicationId) return Refused(connection, $"{path} is no campaign");
            var form = connection.ExecuteScalar<int>("PRAGMA user_version");
            if (form != Form) return Refused(connection, $"{path} was made by {(form < Form ? "an earlier" : "a later")} version of this program (form {form}, this one reads {Form}): run the campaign again into another file");
            connection.Execute("PRAGMA synchronous = NORMAL");
            var head = connection.QuerySingle<HeadRow>("SELECT plant, station, sequence, revision, sources, cycle_us AS cycle, settings, jobs, program, command FROM head").Head;
            return (new CampaignFile(connection, head), null);
        }
        catch (Exception fault) when (fault is SqliteException or InvalidOperationException)
        {
            return Refused(connection, $"{path} is no campaign: {fault.Message}");
        }
    }

    /// <summary>Begins a campaign in a new file.</summary>
    /// <returns>The file, or why there is none.</returns>
    public static (CampaignFile? File, string? Why) Create(string path, CampaignHead head, CheckedSequence sequence, CampaignPlan plan)
    {
        SqliteConnection? connection = null;
        try
        {
            connection = Connect(path, SqliteOpenMode.ReadWriteCreate);
            connection.Execute("PRAGMA journal_mode = WAL; PRAGMA synchronous = NORMAL;");
            connection.Execute($"PRAGMA application_id = {ApplicationId}; PRAGMA user_version = {Form};");
            using var all = connection.BeginTransaction();
            connection.Execute(Tables);
            connection.Execute(
                "INSERT INTO head VALUES (@Plant, @Station, @Sequence, @Revision, @Sources, @CycleMicroseconds, @Settings, @Jobs, @Program, @Command)", head);
            foreach (var vehicle in plan.Vehicles) Add(connection, sequence, vehicle);
            connection.Execute("INSERT INTO fault VALUES (@Text, @Place, @Point, @Kind, @Class, @Effect, @Person)", plan.Faults.Select((fault, place) => new
            {
                Text = fault.ToString(),
                Place = place,
                Point = fault.Point.Name,
                Kind = CampaignWords.Of(fault.Point.Kind),
                Class = CampaignWords.Of(fault.Point.Class),
                fault.Point.Effect,
                Person = fault.Point.TakesAnyPlace,
            }));
            all.Commit();
            return (new CampaignFile(connection, head), null);
        }
        catch (SqliteException fault)
        {
            return Refused(connection, $"{path} cannot be written: {fault.Message}");
        }
    }

    /// <summary>Keeps results, all of them or, when the disk does not take them, none.</summary>
    public void Add(IReadOnlyCollection<CampaignResult> results)
    {
        using var all = _connection.BeginTransaction();
        using var result = Command("INSERT INTO result VALUES ($1, $2, $3, $4, $5, $6, $7, $8, $9)", 9);
        using var deviation = Command("INSERT INTO deviation VALUES ($1, $2, $3, $4)", 4);
        using var number = Command("INSERT INTO number VALUES ($1, $2, $3, $4, $5)", 5);
        foreach (var one in results)
        {
            var job = one.Job;
            Run(result, job.Number, job.Vehicle.Number, (long)job.Seed, job.Faults.ElementAtOrDefault(0)?.ToString(), job.Faults.ElementAtOrDefault(1)?.ToString(),
                one.Verdict.Word(), one.Releases ? 1 : 0, one.TookMicroseconds, one.Trouble);
            foreach (var worse in one.Deviations) Run(deviation, job.Number, worse.Step, worse.Counted.Word(), worse.At);
            foreach (var judged in one.Values) Run(number, job.Number, judged.Step, judged.Value, judged.Low, judged.High);
        }

        all.Commit();
    }

    public void Dispose() => _connection.Dispose();

    private static (CampaignFile? File, string? Why) Refused(SqliteConnection? connection, string why)
    {
        connection?.Dispose();
        return (null, why);
    }

    private static SqliteConnection Connect(string path, SqliteOpenMode mode)
    {
        var connection = new SqliteConnection(new SqliteConnectionStringBuilder { DataSource = path, Mode = mode, Pooling = false }.ToString());
        connection.Open();
        return connection;
    }

    private static void Add(SqliteConnection connection, CheckedSequence sequence, CampaignVehicle vehicle)
    {
        connection.Execute("INSERT INTO vehicle VALUES (@Number, @Text, @OrderText)", new { vehicle.Number, vehicle.Text, OrderText = OrderFile.TextOf(vehicle.Order) });
        connection.Execute("INSERT INTO step VALUES (@Vehicle, @Place, @Id, @Class, @Judged)", Planner.For(sequence, vehicle.Order).Counting.Select((step, place) => new
        {
            Vehicle = vehicle.Number,
            Place = place,
            step.Id,
            Class = CampaignWords.Of(step.Step.Class),
            Judged = step.Step.IsJudged && !step.Step.RecordOnly && !step.Step.ExpectIsRecordOnly,
        }));
    }

    private SqliteCommand Command(string sql, int parameters)
    {
        var command = _connection.CreateCommand();
        command.CommandText = sql;
        for (var at = 1; at <= parameters; at++) command.Parameters.Add(new SqliteParameter { ParameterName = $"${at}" });
        return command;
    }

    private static void Run(SqliteCommand command, params ReadOnlySpan<object?> values)
    {
        for (var at = 0; at < values.Length; at++) command.Parameters[at].Value = values[at] ?? DBNull.Value;
        command.ExecuteNonQuery();
    }

    private sealed record HeadRow(
        string Plant, string Station, string Sequence, long Revision, string Sources, long? Cycle, string Settings, long Jobs, string Program, string Command)
    {
        public CampaignHead Head => new(Plant, Station, Sequence, (int)Revision, Sources, Cycle, Settings, (int)Jobs, Program, Command);
    }
}
