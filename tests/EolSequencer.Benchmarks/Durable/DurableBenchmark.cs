using System.Collections.Immutable;
using System.Diagnostics;
using EolSequencer.Model.Events;
using EolSequencer.Model.Judging;
using EolSequencer.Model.Values;
using EolSequencer.Model.Vehicles;
using EolSequencer.Records;
using Microsoft.Data.Sqlite;
using TakenStation = EolSequencer.Records.Stations.StationResult;

namespace EolSequencer.Benchmarks.Durable;

/// <summary>
/// Steps a second that are on the disk before they are shown, beside bare INSERT and COMMIT of as many bytes with the same
/// settings (WAL, synchronous FULL), in turns in the same run.
/// </summary>
internal static class DurableBenchmark
{
    private const int Rounds = 6;

    public static int Run(string[] args)
    {
        var steps = args.Contains("small") ? 50 : 600;
        var folder = Directory.CreateTempSubdirectory("eol-durable");
        try
        {
            var opened = (FolderResult<DataFolder>.Opened)DataFolder.Open(folder.FullName, TimeProvider.System);
            using var hold = ((TakenStation.Taken)opened.Folder.TakeStation("bench_1")).Station;
            using var bare = new BareInserts(Path.Combine(folder.FullName, "bare.db"));
            var (ours, theirs) = (TimeSpan.Zero, TimeSpan.Zero);
            for (var round = 0; round <= Rounds; round++)
            {
                var one = Steps(hold, steps);
                var other = bare.Insert(steps);
                if (round == 0) continue; // Warm-up.
                (ours, theirs) = (ours + one, theirs + other);
            }

            var count = steps * Rounds;
            Figures.Print("durable steps a second", count / ours.TotalSeconds, "1/s", "0");
            Figures.Print("bare inserts a second", count / theirs.TotalSeconds, "1/s", "0");
            Figures.Print("ratio", theirs / ours, "", "0.000");
            Figures.PrintMachine();
        }
        finally
        {
            folder.Delete(recursive: true);
        }

        return 0;
    }

    private static TimeSpan Steps(Records.Stations.StationHold hold, int steps)
    {
        var journal = hold.BeginRun();
        journal.Append(Begun(journal.Run));
        var begun = Stopwatch.GetTimestamp();
        for (var n = 0; n < steps; n++) journal.Append(Judged(n + 2));
        var took = Stopwatch.GetElapsedTime(begun);
        journal.Append(new RunEnded { N = steps + 2, At = steps * 1000L, RollUp = new RollUp(0, steps, 0, 0, 0), Interrupted = false });
        return took;
    }

    private static RunBegun Begun(string run) => new()
    {
        N = 1, At = 0, Run = run, Plant = "fennholt", Station = "bench_1", StationKind = "startup", Sequence = "startup", Revision = 1,
        Order = new Order("FV-1", Vin.TryParse("TESTVXN06AA000017", CheckDigitRule.Require).Vin!, "orrin", ImmutableSortedDictionary<string, Value>.Empty, ImmutableSortedDictionary<string, Value>.Empty),
        Sources = [], Compiled = "", Program = "bench", Mode = RunMode.Production, Zone = "Europe/Berlin", Wall = DateTimeOffset.UnixEpoch, Planned = 1,
    };

    private static Judged Judged(int n) => new()
    {
        N = n, At = n * 1000L, Step = "lamps[low_left].current", Attempt = 1, Start = n * 1000L - 400, Took = 400, Measured = Verdict.Pass, Counted = Verdict.Pass,
        Criteria = [new CriterionResult("", "4.12", "A", "3.6 .. 5.2 A", "3.6", "5.2", null, Verdict.Pass, false)],
        Readings = [new ReadingUsed("meter.lamp_current", null, n * 1000L - 10, "M-0417")],
    };

    /// <summary>One row of 200 bytes and a commit, nothing else.</summary>
    private sealed class BareInserts : IDisposable
    {
        private readonly SqliteConnection _connection;
        private readonly SqliteCommand _insert;
        private readonly byte[] _row = new byte[200];

        public BareInserts(string file)
        {
            _connection = new SqliteConnection($"Data Source={file};Pooling=False");
            _connection.Open();
            Execute("PRAGMA journal_mode=WAL");
            Execute("PRAGMA synchronous=FULL");
            Execute("CREATE TABLE row (id INTEGER PRIMARY KEY, bytes BLOB NOT NULL) STRICT");
            _insert = _connection.CreateCommand();
            _insert.CommandText = "INSERT INTO row (bytes) VALUES ($bytes)";
            _insert.Parameters.AddWithValue("$bytes", _row);
            _insert.Prepare();
        }

        public TimeSpan Insert(int rows)
        {
            var begun = Stopwatch.GetTimestamp();
            for (var row = 0; row < rows; row++) _insert.ExecuteNonQuery(); // Outside a transaction: each commits.
            return Stopwatch.GetElapsedTime(begun);
        }

        public void Dispose()
        {
            _insert.Dispose();
            _connection.Dispose();
        }

        private void Execute(string text)
        {
            using var command = _connection.CreateCommand();
            command.CommandText = text;
            command.ExecuteNonQuery();
        }
    }
}
