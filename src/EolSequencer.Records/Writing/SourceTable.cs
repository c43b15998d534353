using EolSequencer.Model.Sequences;
using EolSequencer.Records.Sqlite;

namespace EolSequencer.Records.Writing;

/// <summary>Keeps the text of every file a sequence was made from, once, by the hash of its bytes.</summary>
internal sealed class SourceTable(RecordConnection connection)
{
    private readonly Statement _add = connection.Prepare("INSERT OR IGNORE INTO source (hash, bytes) VALUES (?, ?)");

    // Only what a commit has confirmed: a text that was rolled back must be offered again.
    private readonly HashSet<string> _kept = [];
    private readonly List<string> _offered = [];

    public void Add(SourceCopy source)
    {
        if (_kept.Contains(source.Hash)) return;
        _add.Text(1, source.Hash).Blob(2, SourceBytes.Of(source)).Run();
        _offered.Add(source.Hash);
    }

    public void Committed()
    {
        _kept.UnionWith(_offered);
        _offered.Clear();
    }

    public void RolledBack() => _offered.Clear();
}
