using System.Globalization;

namespace EolSequencer.Benchmarks.Editor;

/// <summary>A copy of the demo plant whose start-up sequence holds its own steps several times over, in groups.</summary>
internal sealed class LongSequence : IDisposable
{
    private readonly DirectoryInfo _folder = Directory.CreateTempSubdirectory("eol-long");

    /// <param name="lines">How long the sequence becomes, give or take one of its groups.</param>
    public LongSequence(int lines)
    {
        var from = System.IO.Path.Combine(Repository.Root, "sequences", "demo");
        foreach (var file in Directory.GetFiles(from, "*", SearchOption.AllDirectories))
        {
            var copy = System.IO.Path.Combine(_folder.FullName, System.IO.Path.GetRelativePath(from, file));
            Directory.CreateDirectory(System.IO.Path.GetDirectoryName(copy)!);
            File.Copy(file, copy);
        }

        File.WriteAllText(Path, Grown(File.ReadAllLines(Path), lines));
    }

    /// <summary>The plant's folder.</summary>
    public string Folder => _folder.FullName;

    /// <summary>The sequence.</summary>
    public string Path => System.IO.Path.Combine(Folder, "startup", "startup.yaml");

    public void Dispose() => _folder.Delete(recursive: true);

    private static string Grown(string[] written, int lines)
    {
        var begin = Array.IndexOf(written, "steps:") + 1;
        var end = Array.FindIndex(written, line => line.StartsWith("always:", StringComparison.Ordinal));
        var text = new List<string>(written[..begin]);
        for (var copy = 0; copy == 0 || text.Count + written.Length - end < lines; copy++)
        {
            text.Add(string.Create(CultureInfo.InvariantCulture, $"  - group: copy_{copy}"));
            text.Add("    steps:");
            foreach (var line in written[begin..end])
            {
                if (line.StartsWith("  - ", StringComparison.Ordinal) && text.Count + written.Length - end >= lines) break;
                text.Add(line.Length == 0 ? line : $"    {line}");
            }
        }

        text.AddRange(written[end..]);
        return string.Join('\n', text) + "\n";
    }
}
