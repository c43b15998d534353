namespace EolSequencer.Benchmarks.Plants;

/// <summary>A copy of the demo plant that goes when it is no longer needed.</summary>
internal sealed class DemoCopy : IDisposable
{
    private readonly DirectoryInfo _folder = Directory.CreateTempSubdirectory("eol-plant");

    public DemoCopy()
    {
        var from = System.IO.Path.Combine(Repository.Root, "sequences", "demo");
        foreach (var file in Directory.GetFiles(from, "*", SearchOption.AllDirectories))
        {
            var copy = Path(System.IO.Path.GetRelativePath(from, file));
            Directory.CreateDirectory(System.IO.Path.GetDirectoryName(copy)!);
            File.Copy(file, copy);
        }
    }

    /// <summary>The full path of a file or folder of the plant.</summary>
    public string Path(params ReadOnlySpan<string> parts) => System.IO.Path.Combine([_folder.FullName, .. parts]);

    /// <summary>Adds a file, or replaces one.</summary>
    /// <returns>Its full path.</returns>
    public string Write(string name, string text)
    {
        File.WriteAllText(Path(name), text);
        return Path(name);
    }

    public void Dispose() => _folder.Delete(recursive: true);
}
