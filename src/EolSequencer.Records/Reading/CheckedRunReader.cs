using System.Collections.Immutable;
using EolSequencer.Model.Events;
using EolSequencer.Records.Canonical;
using EolSequencer.Records.Chain;
using EolSequencer.Records.Sqlite;
using EolSequencer.Records.Verify;
using EolSequencer.Records.Writing;

namespace EolSequencer.Records.Reading;

/// <summary>Reads checked runs; for one thread, with a connection of its own.</summary>
public sealed class CheckedRunReader : IAttachments, IDisposable
{
    private readonly RecordFiles _files;
    private readonly RecordConnection _connection;
    private readonly LedgerPicture _ledger;
    private readonly Func<string, Func<byte[]>, string> _sources;
    private readonly Statement _row;
    private readonly Statement _events;
    private readonly Statement _source;
    private readonly Statement _series;
    private readonly ChainReader _chain = new();
    private readonly bool _onlyFindings;
    private long _run;

    internal CheckedRunReader(RecordFiles files, RecordOptions options, LedgerPicture ledger, Func<string, Func<byte[]>, string> sources, bool onlyFindings)
    {
        (_files, _ledger, _sources, _onlyFindings) = (files, ledger, sources, onlyFindings);
        _connection = RecordConnection.ForReading(files.Database, options);
        _row = _connection.Prepare("SELECT id FROM run WHERE run = ?");
        _events = _connection.Prepare("SELECT id, hash, bytes FROM event WHERE id BETWEEN ? AND ? ORDER BY id");
        _source = _connection.Prepare("SELECT bytes FROM source WHERE hash = ?");
        _series = _connection.Prepare("SELECT block FROM series WHERE id = ?");
    }

    /// <summary>One run; null when there is none with this id.</summary>
    /// <exception cref="RecordFault">The record itself cannot be read.</exception>
    public CheckedRun? Read(string run) => RecordFault.Guard(_files, () =>
    {
        if (!_row.Text(1, run).Next()) return null;
        _run = _row.Int(0);
        _row.Reset();
        return ReadEvents(run);
    });

    bool IAttachments.WantBytes => !_onlyFindings;

    string IAttachments.SourceText(string hash) => _sources(hash, () => Required(_source.Text(1, hash), $"the file with hash {hash} is missing"));

    ImmutableArray<SeriesPoint> IAttachments.Series(int n, SeriesReference reference) =>
        SeriesContent.Read(Required(_series.Int(1, EventKey.Of(_run, n)), $"the series of event {n} is missing"), reference, !_onlyFindings);

    public void Dispose() => _connection.Dispose();

    private CheckedRun ReadEvents(string run)
    {
        var events = ImmutableArray.CreateBuilder<RunEvent>(512);
        string? trouble = null;
        var firstLink = "";
        var number = 0;
        _chain.Begin();
        _events.Int(1, EventKey.Before(_run)).Int(2, EventKey.Last(_run));
        try
        {
            while (_events.Next())
            {
                var n = EventKey.NumberOf(_events.Int(0));
                if (n != ++number) trouble ??= $"event {number} is missing";
                number = n;
                if (!_chain.Next(_events.Blob(2), _events.Blob(1))) trouble ??= $"event {n}: its bytes and the link before do not give its link";
                if (firstLink.Length == 0) firstLink = Convert.ToHexStringLower(_events.Blob(1));
                if (_onlyFindings && EventForm.IsNoFinding(_events.Blob(2))) continue;
                events.Add(EventForm.Read(_events.Blob(2).ToArray(), this));
            }
        }
        catch (FormatException fault)
        {
            _events.Reset();
            return new CheckedRun(run, [], $"event {number} cannot be read: {fault.Message}");
        }

        return new CheckedRun(run, events.DrainToImmutable(), trouble ?? AgainstLedger(run, firstLink));
    }

    /// <summary>What the ledger says otherwise; null when it says the same.</summary>
    private string? AgainstLedger(string run, string firstLink)
    {
        if (!_ledger.Begun.TryGetValue(run, out var begun)) return "the ledger does not know it";
        if (begun.First != firstLink) return "its first event is not the one in the ledger";
        if (!_ledger.Ended.TryGetValue(run, out var ended)) return null;
        return ended.Last != Convert.ToHexStringLower(_chain.Head) ? "its last event is not the one in the ledger" : null;
    }

    private static byte[] Required(Statement find, string otherwise)
    {
        if (!find.Next()) throw new FormatException(otherwise);
        var bytes = find.Blob(0).ToArray();
        find.Reset();
        return bytes;
    }
}
