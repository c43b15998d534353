using EolSequencer.Language.Diagnostics;
using EolSequencer.Language.Plants;
using EolSequencer.Language.Source;
using EolSequencer.Language.Yaml;

namespace EolSequencer.Language.Loading;

/// <summary>Opens a file by its path as one of a plant.</summary>
internal static class PlantFiles
{
    /// <summary>The file of a kind and its plant; null: already reported.</summary>
    public static (PlantFile File, PlantFolder Folder)? Open(string path, FileKind wanted, Report report)
    {
        if (Directory.Exists(path) || !File.Exists(path))
        {
            SourceFiles.TryRead(path, report);
            return null;
        }

        if (PlantFolder.Find(path, report) is not { } folder) return null;
        if (folder.At(path) is { } file) return IsOf(file, wanted, report) ? (file, folder) : null;

        if (SourceFiles.TryRead(path, report) is { } text) report.Add(PlantCodes.UnknownKind, SourceText.WholeFile(text.Path), $"this is no file of a plant; {wanted.OneWord()} is wanted");
        return null;
    }

    /// <summary>Whether a file is of a kind; reported when not.</summary>
    public static bool IsOf(PlantFile file, FileKind wanted, Report report)
    {
        if (file.Kind == wanted) return true;
        if (file.Root is not { } root) return false;
        ReportKind(file.Kind, root, wanted, report);
        return false;
    }

    /// <summary>Whether a document begins with a kind; reported when not.</summary>
    public static bool IsOf(YamlNode root, FileKind wanted, Report report)
    {
        var kind = root is YamlMap { Entries: [var first, ..] } ? FileKinds.Of(first.Key.Text) : null;
        if (kind != wanted) ReportKind(kind, root, wanted, report);
        return kind == wanted;
    }

    /// <summary>Reports a file that does not begin with a kind.</summary>
    public static void ReportUnknownKind(YamlNode root, Report report)
    {
        var key = root is YamlMap { Entries: [var first, ..] } ? first.Key : null;
        var near = key is null ? null : Nearest.Of(key.Text, FileKinds.All.Select(kind => kind.Key()));
        report.Add(
            PlantCodes.UnknownKind,
            key?.Place ?? root.Place,
            key is null ? "the file begins with no key" : $"{Shown.Quoted(key.Text)} is no kind of file",
            near is null ? null : $"did you mean '{near}'?");
    }

    private static void ReportKind(FileKind? found, YamlNode root, FileKind wanted, Report report)
    {
        var place = root is YamlMap { Entries: [{ Value: YamlScalar id }, ..] } ? id.ContentPlace : root.Place;
        if (found is { } other) report.Add(PlantCodes.WrongKind, place, $"this is {other.OneWord()}, {wanted.OneWord()} is wanted");
        else ReportUnknownKind(root, report);
    }
}
