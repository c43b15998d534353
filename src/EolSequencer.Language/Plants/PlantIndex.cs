using System.Globalization;
using EolSequencer.Language.Diagnostics;
using EolSequencer.Model.Source;

namespace EolSequencer.Language.Plants;

/// <summary>Finds the files of a plant.</summary>
internal static class PlantIndex
{
    /// <summary>The most files a plant may have; a data folder put there by mistake would hold more.</summary>
    public const int MostFiles = 5_000;

    /// <summary>The files below a folder by path, or null when there are too many, which has then been reported.</summary>
    public static IReadOnlyList<PlantFile>? Read(string root, Report report, PlantTexts texts, int most = MostFiles)
    {
        var files = new List<PlantFile>();
        var folders = new Stack<string>([root]);
        var head = new byte[FileHeader.MostBytes];
        while (folders.TryPop(out var folder))
        {
            foreach (var inner in Children(folder, Directory.GetDirectories))
            {
                if (!IsLeftOut(inner)) folders.Push(inner);
            }

            foreach (var path in Children(folder, Directory.GetFiles))
            {
                if (Indexed(root, path, head, report, texts) is { } file) files.Add(file);
            }

            if (files.Count <= most) continue;
            report.Add(PlantCodes.TooManyFiles, SourcePlace.None with { File = root }, $"the folder holds more than {most.ToString(CultureInfo.InvariantCulture)} YAML files");
            return null;
        }

        foreach (var path in texts.Unsaved(root).Where(path => !File.Exists(path)))
        {
            if (Indexed(root, path, head, report, texts) is { } file) files.Add(file);
        }

        return [.. files.OrderBy(file => file.RelativePath, StringComparer.Ordinal)];
    }

    /// <summary>The folders below a folder, it included, that are plants; a plant inside another is left out.</summary>
    public static IReadOnlyList<string> PlantsBelow(string folder)
    {
        if (PlantFolder.RootOf(folder) is not null) return [];
        return [.. Children(folder, Directory.GetDirectories).Order(StringComparer.Ordinal).SelectMany(inner => IsPlant(inner) ? [inner] : IsLeftOut(inner) ? [] : PlantsBelow(inner))];
    }

    private static bool IsPlant(string folder) => File.Exists(Path.Combine(folder, PlantFolder.PlantFileName));

    private static PlantFile? Indexed(string root, string path, byte[] head, Report report, PlantTexts texts)
    {
        var isYaml = path.EndsWith(".yaml", StringComparison.OrdinalIgnoreCase) || path.EndsWith(".yml", StringComparison.OrdinalIgnoreCase);
        if (!isYaml && !path.EndsWith(".json", StringComparison.OrdinalIgnoreCase)) return null;

        var header = FileHeader.Of(texts.Head(path) ?? HeadOf(path, head));
        // JSON without a kind is somebody else's file, such as an editor's settings.
        return isYaml || header is not null
            ? new PlantFile(path, Path.GetRelativePath(root, path).Replace(Path.DirectorySeparatorChar, '/'), header, report, texts)
            : null;
    }

    // A file that cannot be read is indexed without a kind; whoever needs it reports why.
    private static ReadOnlySpan<byte> HeadOf(string path, byte[] head)
    {
        try
        {
            using var file = new FileStream(path, FileMode.Open, FileAccess.Read, FileShare.ReadWrite | FileShare.Delete, bufferSize: 0);
            return head.AsSpan(0, file.ReadAtLeast(head, head.Length, throwOnEndOfStream: false));
        }
        catch (Exception fault) when (fault is IOException or UnauthorizedAccessException)
        {
            return [];
        }
    }

    // A folder inside with a plant of its own is another plant; a link may lead round in a circle.
    private static bool IsLeftOut(string folder)
    {
        var info = new DirectoryInfo(folder);
        return info.Name.StartsWith('.') || info.Name is "bin" or "obj"
            || info.LinkTarget is not null || IsPlant(folder);
    }

    private static string[] Children(string folder, Func<string, string[]> list)
    {
        try
        {
            return list(folder);
        }
        catch (Exception fault) when (fault is IOException or UnauthorizedAccessException)
        {
            return [];
        }
    }
}
