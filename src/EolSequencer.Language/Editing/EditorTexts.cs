using System.Text;
using EolSequencer.Language.Diagnostics;
using EolSequencer.Language.Plants;
using EolSequencer.Language.Source;
using EolSequencer.Language.Yaml;

namespace EolSequencer.Language.Editing;

/// <summary>The texts in an editor's windows, in front of those on disk. Each text is read once, until it changes.</summary>
/// <remarks>May be asked and told from different threads.</remarks>
internal sealed class EditorTexts : PlantTexts
{
    private readonly Lock _lock = new();
    private readonly Dictionary<string, string> _open = new(StringComparer.Ordinal);
    private readonly Dictionary<string, ReadText> _read = new(StringComparer.Ordinal);

    /// <summary>A text that has been read, with what was found in it.</summary>
    /// <param name="Written">The text in the window, or null for the file on disk.</param>
    /// <param name="Stamp">Length and time of change of the file on disk.</param>
    private sealed record ReadText(string? Written, (long Length, DateTime Written) Stamp, SourceText? Text, YamlNode? Root, Report Findings);

    /// <summary>The text of a window; null when the file is not open.</summary>
    public string? Find(string path)
    {
        lock (_lock) return _open.GetValueOrDefault(path);
    }

    public void Set(string path, string text)
    {
        lock (_lock) _open[path] = text;
    }

    public void Close(string path)
    {
        lock (_lock)
        {
            _open.Remove(path);
            _read.Remove(path);
        }
    }

    public override (SourceText? Text, YamlNode? Root) Read(string path, Report report)
    {
        var written = Find(path);
        var stamp = written is null ? StampOf(path) : default;
        ReadText? known;
        lock (_lock) known = _read.GetValueOrDefault(path);
        if (known is null || !ReferenceEquals(known.Written, written) || known.Stamp != stamp)
        {
            known = Read(path, written, stamp);
            lock (_lock) _read[path] = known;
        }

        report.Absorb(known.Findings, _ => true);
        return (known.Text, known.Root);
    }

    public override byte[]? Head(string path) =>
        Find(path) is { } text ? Encoding.UTF8.GetBytes(text, 0, Math.Min(text.Length, FileHeader.MostBytes)) : null;

    public override IEnumerable<string> Unsaved(string folder)
    {
        lock (_lock) return [.. _open.Keys.Where(path => path.StartsWith(folder + Path.DirectorySeparatorChar, StringComparison.Ordinal)).Order(StringComparer.Ordinal)];
    }

    private static ReadText Read(string path, string? written, (long, DateTime) stamp)
    {
        var findings = new Report();
        var text = written is null ? SourceFiles.TryRead(path, findings) : SourceText.TryDecode(SourceFiles.ShownPath(path), Encoding.UTF8.GetBytes(written), findings);
        return new ReadText(written, stamp, text, text is null ? null : YamlReader.Read(text, findings), findings);
    }

    private static (long, DateTime) StampOf(string path)
    {
        try
        {
            var file = new FileInfo(path);
            return file.Exists ? (file.Length, file.LastWriteTimeUtc) : default;
        }
        catch (Exception fault) when (fault is IOException or UnauthorizedAccessException)
        {
            return default;
        }
    }
}
