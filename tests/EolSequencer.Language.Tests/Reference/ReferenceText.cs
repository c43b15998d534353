using System.Text.RegularExpressions;

namespace EolSequencer.Language.Tests.Reference;

/// <summary>What the language reference shows: its YAML blocks, and the examples of its tables of keys.</summary>
internal static partial class ReferenceText
{
    /// <summary>A sequence of the demo plant up to its steps, where a list of steps belongs.</summary>
    public const string StepsOfDemo = "sequence: odd\nrevision: 1\nvehicle-type: orrin\nstation-kind: startup\ndevices: { bus: vehicle-bus, meter: dc-meter, noise: sound-meter, line: line-signal }\ndefaults: { within: 60 s }\nsteps:\n";

    private static readonly string[] Lines = File.ReadAllLines(RepositoryFiles.Named("README.md").Single());

    /// <summary>Where the YAML blocks begin.</summary>
    public static IEnumerable<int> BlockLines => Lines.Index().Where(line => line.Item == "```yaml").Select(line => line.Index);

    public static string Block(int line) => string.Join('\n', Lines.Skip(line + 1).TakeWhile(text => text != "```")) + "\n";

    /// <summary>The blocks as files: a list of steps is put into a sequence, limits are left out.</summary>
    public static IEnumerable<string> Files() => BlockLines.Select(Block).Where(block => !block.StartsWith("limits:", StringComparison.Ordinal)).Select(AsFile);

    /// <summary>A block as the file it is, or a list of steps as the sequence that it can be part of.</summary>
    public static string AsFile(string block) =>
        IsSteps(block) ? StepsOfDemo + string.Concat(block.Split('\n', StringSplitOptions.RemoveEmptyEntries).Select(text => $"  {text}\n")) : block;

    private static bool IsSteps(string block) => block.StartsWith("- ", StringComparison.Ordinal);

    /// <summary>The rows of all tables that have keys or forms and an example of each.</summary>
    /// <remarks>A table is named by its heading, a further one below the same heading by its number; rows with … are about the keys inside the one above.</remarks>
    public static IEnumerable<ReferenceRow> Rows() => Rows(IsOfKeys);

    /// <summary>The rows of all tables of what stands in expectations and expressions, each with its examples.</summary>
    public static IEnumerable<ReferenceRow> FormRows() => Rows(columns => columns.Contains("example") && columns[0] is "form" or "name" or "function" or "feature" && !IsOfKeys(columns));

    private static IEnumerable<ReferenceRow> Rows(Predicate<string[]> isWanted)
    {
        var (heading, tables, above, columns) = ("", 0, "", Array.Empty<string>());
        foreach (var (index, line) in Lines.Index())
        {
            if (line.StartsWith('#')) (heading, tables) = (line.TrimStart('#', ' '), 0);
            if (!line.StartsWith('|'))
            {
                columns = [];
                continue;
            }

            var cells = Bar().Split(line)[1..^1].Select(cell => cell.Trim().Replace(@"\|", "|", StringComparison.Ordinal)).ToArray();
            if (columns.Length == 0)
            {
                columns = cells;
                if (isWanted(columns)) tables++;
            }
            else if (isWanted(columns) && !cells[0].StartsWith("--", StringComparison.Ordinal))
            {
                var place = tables == 1 ? heading : $"{heading} {tables}";
                var keys = Spans(cells[0]).Select(span => span.Split(':')[0]).ToList();
                if (cells[0].StartsWith('…')) place += $" … {above}";
                else if (keys.Count > 0) above = keys[0];
                yield return new ReferenceRow(index + 1, place, keys, Spans(cells[Array.IndexOf(columns, "example")]));
            }
        }
    }

    private static bool IsOfKeys(string[] columns) => columns.Contains("example") && (columns[0] == "key" || (columns[0] == "form" && columns[1].StartsWith("what is ", StringComparison.Ordinal)));

    private static List<string> Spans(string cell) => [.. Span().Matches(cell).Select(span => span.Groups["text"].Value)];

    [GeneratedRegex(@"(?<!\\)\|")]
    private static partial Regex Bar();

    [GeneratedRegex("`(?<text>[^`]+)`")]
    private static partial Regex Span();
}
