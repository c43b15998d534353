using System.Globalization;
using System.Text;
using EolSequencer.Simulators.Faults;

namespace EolSequencer.Simulators.Tests.Faults;

/// <summary>
/// The page of the simulators lists exactly the fault points that exist. With EOL_WRITE_PAGES=1 in the environment the
/// table is written into the page instead of compared.
/// </summary>
public sealed class FaultTableTests
{
    private const string Begin = "<!-- fault points: written by FaultTableTests -->\n";
    private const string End = "<!-- end of fault points -->";

    [Fact]
    public void The_page_lists_exactly_the_points_that_exist()
    {
        var path = Repository.PathOf("simulators", "README.md");
        var page = File.ReadAllText(path);
        var from = page.IndexOf(Begin, StringComparison.Ordinal) + Begin.Length;
        var to = page.IndexOf(End, StringComparison.Ordinal);
        Assert.InRange(from, Begin.Length, to);
        if (Environment.GetEnvironmentVariable("EOL_WRITE_PAGES") == "1") File.WriteAllText(path, page[..from] + Table() + page[to..]);
        else Assert.Equal(Table(), page[from..to]);
    }

    private static string Table()
    {
        var table = new StringBuilder("| name | value | kind | class | what is wrong |\n|---|---|---|---|---|\n");
        foreach (var point in FaultCatalogue.All)
        {
            table.Append(CultureInfo.InvariantCulture, $"| `{point.Name}` | {Value(point)} | {Words(point.Kind)} | {point.Class.ToString().ToLowerInvariant()} | {point.Effect} |\n");
        }

        return table.ToString();
    }

    private static string Value(FaultPoint point)
    {
        var number = point.NumberIsOptional ? $"for so many {point.Unit}; else for ever"
            : point.Number is { } value ? string.Create(CultureInfo.InvariantCulture, $"{value} {point.Unit}").TrimEnd()
            : "";
        var place = point.TakesAnyPlace ? "a step" : point.Places.IsEmpty ? "" : string.Join(", ", point.Places);
        return place.Length == 0 ? number : number.Length == 0 ? place : $"{place}: {number}";
    }

    private static string Words(FaultKind kind) =>
        string.Concat(kind.ToString().Select((letter, i) => char.IsUpper(letter) ? (i > 0 ? " " : "") + char.ToLowerInvariant(letter) : letter.ToString()));
}
