using System.Text.RegularExpressions;
using EolSequencer.Language.Diagnostics;

namespace EolSequencer.Language.Tests.Diagnostics;

/// <summary>Whoever looks a code up sees how it comes about: every code has an example, and every example has its code.</summary>
public sealed partial class CodeExampleTests : IClassFixture<CodeExampleTests.Kit>
{
    private const string InWords = "in words";

    private static readonly List<(string Place, string Code, string Example)> Rows = [.. Read()];

    private readonly Kit _kit;

    public CodeExampleTests(Kit kit) => _kit = kit;

    /// <summary>One test plant for all examples.</summary>
    public sealed class Kit : IDisposable
    {
        internal CodeExamples Examples { get; } = new();

        public void Dispose() => Examples.Dispose();
    }

    [Fact]
    public void Every_code_has_an_example() =>
        Assert.Equal(DiagnosticCatalogue.All.Select(code => code.Id), Rows.Select(row => row.Code).Distinct().Order(StringComparer.Ordinal));

    [Theory]
    [MemberData(nameof(Places))]
    public void Every_example_has_its_code(string place)
    {
        var without = Rows.Where(row => row.Place == place)
            .Select(row => (row.Code, row.Example, Found: _kit.Examples.Found(place, row.Example)))
            .Where(row => !row.Found.Contains(row.Code))
            .Select(row => $"{row.Code} {row.Example}: found {string.Join(' ', row.Found)}");

        Assert.Empty(without);
    }

    /// <summary>What cannot be shown in a line is so rare that it is listed here; a new code is shown by an example.</summary>
    [Fact]
    public void Few_codes_have_an_example_in_words_only() => Assert.Equal(
        ["ADV012", "ADV013", "ADV014", "CSV005", "FIL001", "FIL002", "FIL003", "FIL004", "FIL005", "FIL006", "FIL007", "FIL008", "ORD002", "ORD010", "ORD011", "ORD012", "ORD013", "ORD014", "PLT001", "PLT002", "PLT003", "PLT006", "SEQ036", "STA005", "STA006", "STA007", "STA008", "YML002", "YML004"],
        Rows.Where(row => row.Place == InWords).Select(row => row.Code));

    public static TheoryData<string> Places() => [.. Rows.Select(row => row.Place).Where(place => place != InWords).Distinct()];

    private static IEnumerable<(string, string, string)> Read()
    {
        string? place = null;
        foreach (var line in File.ReadLines(RepositoryFiles.Named("README.md").Single()))
        {
            if (line.StartsWith('#')) place = Heading().Match(line) is { Success: true } heading ? heading.Groups["place"].Value.Trim() : null;
            if (place is null || !Row().IsMatch(line)) continue;
            var cells = Row().Match(line);
            yield return (place, cells.Groups["code"].Value, Unescaped(cells.Groups["example"].Value));
        }
    }

    // In a table a bar is written \|, and an example stands between back quotes.
    private static string Unescaped(string cell) => cell.Trim('`').Replace("\\|", "|", StringComparison.Ordinal);

    [GeneratedRegex(@"^### Examples(?:: (?<place>.+)| (?<place>in words))$")]
    private static partial Regex Heading();

    [GeneratedRegex(@"^\| (?<code>[A-Z]{3}\d{3}) \| (?<example>.*) \|$")]
    private static partial Regex Row();
}
