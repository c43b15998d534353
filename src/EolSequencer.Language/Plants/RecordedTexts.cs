using System.Text;
using EolSequencer.Language.Diagnostics;
using EolSequencer.Language.Source;
using EolSequencer.Language.Yaml;
using EolSequencer.Model.Sequences;

namespace EolSequencer.Language.Plants;

/// <summary>The texts that a record keeps of one sequence, as a plant of their own. Nothing is looked for on the disk.</summary>
internal sealed class RecordedTexts : PlantTexts
{
    private static readonly string Root = Path.Combine(Path.GetPathRoot(Path.GetTempPath()) ?? "", "recorded");

    private readonly Dictionary<string, SourceCopy> _copies;

    private RecordedTexts(IEnumerable<SourceCopy> copies) => _copies = copies.ToDictionary(copy => FullPath(copy.Path), StringComparer.Ordinal);

    public override bool HavePictures => false;

    /// <summary>The plant that these copies are of; it holds what the sequence was made from and nothing else.</summary>
    public static PlantFolder Plant(IEnumerable<SourceCopy> copies, Report report)
    {
        var texts = new RecordedTexts(copies);
        var files = texts._copies
            .Where(copy => !copy.Key.EndsWith(".csv", StringComparison.OrdinalIgnoreCase))
            .OrderBy(copy => copy.Value.Path, StringComparer.Ordinal)
            .Select(copy => new PlantFile(copy.Key, copy.Value.Path, FileHeader.Of(Encoding.UTF8.GetBytes(copy.Value.Text)), report, texts));
        return new PlantFolder(Root, [.. files], report, texts);
    }

    public override (SourceText? Text, YamlNode? Root) Read(string path, Report report)
    {
        var text = ReadPlain(path, report);
        return (text, text is null ? null : YamlReader.Read(text, report));
    }

    public override SourceText? ReadPlain(string path, Report report) =>
        _copies.GetValueOrDefault(path) is { } copy ? SourceText.TryDecode(copy.Path, Encoding.UTF8.GetBytes(copy.Text), report) : null;

    public override bool IsThere(string path) => _copies.ContainsKey(path);

    public override string? RootOf(SourceText text) => Root;

    private static string FullPath(string relative) => Path.GetFullPath(relative, Root);
}
