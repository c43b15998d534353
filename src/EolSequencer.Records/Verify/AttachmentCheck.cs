using System.Collections.Immutable;
using EolSequencer.Model.Events;
using EolSequencer.Records.Canonical;
using EolSequencer.Records.Sqlite;
using EolSequencer.Records.Writing;

namespace EolSequencer.Records.Verify;

/// <summary>Stands in for what events refer to while they are read, and reports what is not there or not the same.</summary>
internal sealed class AttachmentCheck(RecordConnection connection, HashSet<string> sources, FindingList findings) : IAttachments
{
    private readonly Statement _block = connection.Prepare("SELECT block FROM series WHERE id = ?");
    private readonly Statement _blocks = connection.Prepare("SELECT count(*) FROM series WHERE id BETWEEN ? AND ?");
    private string _run = "";
    private long _row;
    private int _seriesDue;

    public void Begin(string run, long row) => (_run, _row, _seriesDue) = (run, row, 0);

    public string SourceText(string hash)
    {
        if (!sources.Contains(hash)) findings.Add(FindingKind.Source, $"the file with hash {hash} that it was made from is missing", _run);
        return "";
    }

    public ImmutableArray<SeriesPoint> Series(int n, SeriesReference reference)
    {
        _seriesDue++;
        if (!_block.Int(1, EventKey.Of(_row, n)).Next())
        {
            findings.Add(FindingKind.Series, "its series is missing", _run, n);
            return [];
        }

        var block = _block.Blob(0).ToArray();
        _block.Reset();
        try
        {
            return SeriesContent.Read(block, reference);
        }
        catch (FormatException fault)
        {
            findings.Add(FindingKind.Series, fault.Message, _run, n);
            return [];
        }
    }

    /// <summary>No series may be kept beyond those the events recorded.</summary>
    public void End()
    {
        _blocks.Int(1, EventKey.Before(_row)).Int(2, EventKey.Last(_row)).Next();
        var found = _blocks.Int(0);
        _blocks.Reset();
        if (found > _seriesDue) findings.Add(FindingKind.Series, $"it has {found} series, its events recorded {_seriesDue}", _run);
    }
}
