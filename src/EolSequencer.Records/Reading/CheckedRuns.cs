using System.Collections.Concurrent;
using System.Collections.Immutable;
using Dapper;
using EolSequencer.Records.Sqlite;
using EolSequencer.Records.Verify;
using EolSequencer.Records.Writing;

namespace EolSequencer.Records.Reading;

/// <summary>
/// Reads many runs in full, one after the other, and checks each against chain and ledger while it is read; no run is kept.
/// Ledger, seals and keys are walked once, when it is opened.
/// </summary>
public sealed class CheckedRuns
{
    private readonly ConcurrentDictionary<string, string> _sources = new(StringComparer.Ordinal);
    private readonly RecordFiles _files;
    private readonly RecordOptions _options;
    private readonly LedgerPicture _ledger;

    private CheckedRuns(RecordFiles files, RecordOptions options, LedgerPicture ledger, ImmutableArray<Finding> findings) =>
        (_files, _options, _ledger, Findings) = (files, options, ledger, findings);

    /// <summary>What is wrong with ledger, seals and keys; empty when nothing is.</summary>
    public ImmutableArray<Finding> Findings { get; }

    internal static CheckedRuns Open(RecordFiles files, RecordOptions options) => files.Read(options, connection =>
    {
        var findings = new FindingList();
        var ledger = new LedgerCheck(connection, findings).Walk(after: 0);
        KeyCheck.Walk(connection, ledger, findings);
        return new CheckedRuns(files, options, ledger, findings.Kept);
    });

    /// <summary>The ids of the runs wanted, oldest first, however many there are.</summary>
    public ImmutableArray<string> Select(RunFilter filter) => _files.Read(_options, connection =>
    {
        var (where, values) = RunWhere.Of(filter, []);
        return connection.Connection.Query<string>($"SELECT run FROM run {where} ORDER BY id", values).ToImmutableArray();
    });

    /// <summary>A reader for one thread.</summary>
    /// <param name="onlyFindings">
    /// True: what a run found, for whoever judges it. Raw bytes of readings, and events that say what was asked and begun, are checked like
    /// everything and then left out.
    /// </param>
    public CheckedRunReader OpenReader(bool onlyFindings = false) => new(_files, _options, _ledger, SourceText, onlyFindings);

    private string SourceText(string hash, Func<byte[]> read) => _sources.GetOrAdd(hash, static (hash, read) =>
    {
        var bytes = read();
        return SourceBytes.HashOf(bytes) == hash ? SourceBytes.TextOf(bytes) : throw new FormatException($"the file kept as {hash} has been changed");
    }, read);
}
