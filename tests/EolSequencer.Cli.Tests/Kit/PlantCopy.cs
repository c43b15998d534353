namespace EolSequencer.Cli.Tests.Kit;

/// <summary>A copy of the demo plant in a folder of its own, to which a test adds what it is about.</summary>
internal sealed class PlantCopy : IDisposable
{
    private readonly DirectoryInfo _folder = Directory.CreateTempSubdirectory("eol-plant-");

    public PlantCopy()
    {
        var demo = Path.Combine(Repository.Root, "sequences", "demo");
        foreach (var source in Directory.GetFiles(demo, "*", SearchOption.AllDirectories)) Put(Path.GetRelativePath(demo, source), File.ReadAllText(source));
    }

    public string Root => _folder.FullName;

    /// <summary>Writes a file, and gives its full path.</summary>
    public string Put(string relative, string text)
    {
        var path = Path.Combine(Root, relative);
        Directory.CreateDirectory(Path.GetDirectoryName(path)!);
        File.WriteAllText(path, text);
        return path;
    }

    /// <summary>Output in which the folder stands as PLANT.</summary>
    public string Shown(string output) => output.Replace(Root, "PLANT", StringComparison.Ordinal).ReplaceLineEndings("\n");

    public void Dispose() => _folder.Delete(recursive: true);
}
