using System.Runtime.CompilerServices;
using System.Text;
using EolSequencer.Language.Binding;
using EolSequencer.Language.Diagnostics;
using EolSequencer.Language.Plants;

namespace EolSequencer.Language.Tests.Binding;

/// <summary>A copy of the good test plant in a folder of its own, to which a test adds what it is about.</summary>
internal sealed class TestPlant : IDisposable
{
    private readonly DirectoryInfo _folder = Directory.CreateTempSubdirectory("plant-");

    public TestPlant()
    {
        foreach (var source in Directory.GetFiles(Good, "*", SearchOption.AllDirectories)) Put(Path.GetRelativePath(Good, source), File.ReadAllText(source));
    }

    /// <summary>The folder of the good plant in the source tree.</summary>
    public static string Good { get; } = Path.Combine(Documents(), "good");

    /// <summary>The folder of the documents with a fault.</summary>
    public static string Bad { get; } = Path.Combine(Documents(), "bad");

    public string Root => _folder.FullName;

    /// <summary>The findings of the whole good plant that are meant: limits which only documents with a fault use.</summary>
    public static bool IsMeant(Diagnostic finding) => finding.Code == AdviceCodes.LimitUnused;

    public string PathOf(string relative) => Path.Combine(Root, relative);

    /// <summary>Writes a file, and gives its full path.</summary>
    public string Put(string relative, string text)
    {
        var path = PathOf(relative);
        Directory.CreateDirectory(Path.GetDirectoryName(path)!);
        File.WriteAllText(path, text);
        return path;
    }

    /// <summary>Writes a file in place of the one of its kind and id, if there is one, and gives its full path.</summary>
    public string Replace(string relative, string text)
    {
        if (FileHeader.Of(Encoding.UTF8.GetBytes(text)) is not { } header) return Put(relative, text);
        if (header.Kind == FileKind.Plant) return Put(PlantFolder.PlantFileName, text);
        foreach (var path in Directory.GetFiles(Root, "*.yaml", SearchOption.AllDirectories))
        {
            if (FileHeader.Of(File.ReadAllBytes(path)) == header) File.Delete(path);
        }

        return Put(relative, text);
    }

    public void Dispose() => _folder.Delete(recursive: true);

    private static string Documents([CallerFilePath] string path = "") => Path.Combine(Path.GetDirectoryName(path)!, "Documents");
}
