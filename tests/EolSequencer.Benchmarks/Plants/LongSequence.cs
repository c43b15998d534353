using System.Globalization;

namespace EolSequencer.Benchmarks.Plants;

/// <summary>The start-up sequence of the demo plant with its own steps several times over, in groups.</summary>
internal static class LongSequence
{
    /// <param name="lines">How long the sequence becomes, give or take one of its groups.</param>
    /// <returns>The sequence's full path.</returns>
    public static string Write(DemoCopy plant, int lines)
    {
        var name = Path.Combine("startup", "startup.yaml");
        return plant.Write(name, Grown(File.ReadAllLines(plant.Path(name)), lines));
    }

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
