using EolSequencer.Language.Plants;
using EolSequencer.Language.Tests.Loading;

namespace EolSequencer.Language.Tests.Reference;

/// <summary>A copy of the demo plant in a folder of its own, to try out in it what the language reference shows.</summary>
internal sealed class DemoCopy : IDisposable
{
    private readonly DirectoryInfo _folder = Directory.CreateTempSubdirectory("reference-");

    public DemoCopy() => CopyInto(".");

    public string Root => _folder.FullName;

    public void Dispose() => _folder.Delete(recursive: true);

    public string Read(string relative) => File.ReadAllText(Path.Combine(Root, relative));

    /// <summary>Writes a file, and gives its full path.</summary>
    public string Write(string relative, string text)
    {
        var path = Path.Combine(Root, relative);
        Directory.CreateDirectory(Path.GetDirectoryName(path)!);
        File.WriteAllText(path, text);
        return path;
    }

    /// <summary>Removes the file of a kind and id from the whole plant.</summary>
    public void Remove(FileHeader header) => Remove(header, ".");

    /// <summary>Makes a folder a demo plant of its own, without the file of a kind and id.</summary>
    public void PlantWithout(FileHeader header, string relative)
    {
        CopyInto(relative);
        Remove(header, relative);
    }

    private void Remove(FileHeader header, string relative)
    {
        var same = Directory.GetFiles(Path.Combine(Root, relative), "*.yaml", SearchOption.AllDirectories).Where(path => FileHeader.Of(File.ReadAllBytes(path)) == header);
        foreach (var path in same.ToList()) File.Delete(path);
    }

    private void CopyInto(string relative)
    {
        foreach (var source in Directory.GetFiles(DemoPlant.Folder, "*", SearchOption.AllDirectories))
        {
            var copy = Path.Combine(Root, relative, Path.GetRelativePath(DemoPlant.Folder, source));
            Directory.CreateDirectory(Path.GetDirectoryName(copy)!);
            File.Copy(source, copy);
        }
    }
}
