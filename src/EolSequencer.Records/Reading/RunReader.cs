using System.Collections.Immutable;
using Dapper;
using EolSequencer.Model.Events;
using EolSequencer.Records.Canonical;
using EolSequencer.Records.Sqlite;

namespace EolSequencer.Records.Reading;

/// <summary>
/// Reads runs and vehicles, also while stations write. Every call is short: it copies what it finds and lets the record go,
/// so that the write-ahead log can shrink. From any thread.
/// </summary>
/// <remarks>Trouble with the record itself is a <see cref="RecordFault"/>.</remarks>
public sealed class RunReader
{
    private readonly RecordFiles _files;
    private readonly RecordOptions _options;

    internal RunReader(RecordFiles files, RecordOptions options) => (_files, _options) = (files, options);

    /// <summary>Runs, newest first; of a vehicle whose number was corrected, those under all its numbers.</summary>
    public ImmutableArray<RunSummary> List(RunFilter filter) => Read(connection =>
    {
        connection.HoldMoment();
        var (where, values) = RunWhere.Of(filter, filter.Vin is null ? [] : new SqliteTables(connection).NumbersOf(filter));
        var rows = connection.Connection.Query<RunColumns>($"SELECT {RunColumns.All} FROM run {where} ORDER BY id DESC LIMIT @Most", values);
        return rows.Select(row => row.ToSummary()).ToImmutableArray();
    });

    /// <summary>One run on one line; null when there is none with this id.</summary>
    public RunSummary? Find(string run) => Read(connection => Row(connection, run)?.ToSummary());

    /// <summary>One run in full; null when there is none with this id.</summary>
    public RunRecord? Load(string run) => Read(connection =>
    {
        connection.HoldMoment();
        return Row(connection, run) is { } row ? new RunRecord(row.ToSummary(), RunEvents.Read(connection, row.Id)) : null;
    });

    /// <summary>The step results of a run in the order they were found, every attempt; empty when there is no such run.</summary>
    public ImmutableArray<StepSummary> Steps(string run) => Read(connection => connection.Connection
        .Query<StepColumns>(
            $"""
            SELECT {StepColumns.All} FROM step
            WHERE id BETWEEN (SELECT id << 20 FROM run WHERE run = @run) AND (SELECT (id << 20) + 1048575 FROM run WHERE run = @run)
            ORDER BY id
            """,
            new { run })
        .Select(row => row.ToSummary())
        .ToImmutableArray());

    private static RunColumns? Row(RecordConnection connection, string run) => connection.Connection
        .QuerySingleOrDefault<RunColumns>($"SELECT {RunColumns.All} FROM run WHERE run = @run", new { run });

    private T Read<T>(Func<RecordConnection, T> read) => _files.Read(_options, read);
}
