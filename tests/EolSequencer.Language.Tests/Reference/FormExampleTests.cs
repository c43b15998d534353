using EolSequencer.Language.Expressions;
using EolSequencer.Language.Loading;

namespace EolSequencer.Language.Tests.Reference;

/// <summary>What the tables of expectations, functions and features show can be written: each example loads in a step it may stand in.</summary>
public sealed class FormExampleTests : IDisposable
{
    private readonly DirectoryInfo _folder = Directory.CreateTempSubdirectory("forms-");

    public FormExampleTests()
    {
        foreach (var (name, text) in FormPlant.Files) File.WriteAllText(Path.Combine(_folder.FullName, name), text);
    }

    public void Dispose() => _folder.Delete(recursive: true);

    [Fact]
    public void The_tables_are_found() =>
        Assert.Equal(
            ["Expectations", "Expressions", "Expressions 2", "Traces", "Traces 2", "Traces 3", "Traces 4"],
            ReferenceText.FormRows().Select(row => row.Place).Distinct().Order(StringComparer.Ordinal));

    [Fact]
    public void Every_row_has_an_example() => Assert.Empty(ReferenceText.FormRows().Where(row => row.Examples.Count == 0).Select(row => $"line {row.Line}"));

    [Theory]
    [MemberData(nameof(Places))]
    public void Every_example_can_be_written(string place)
    {
        var bad = new List<string>();
        foreach (var row in ReferenceText.FormRows().Where(row => row.Place == place))
        {
            bad.AddRange(row.Examples.Where(example => !CanBeWritten(example)).Select(example => $"line {row.Line}, {example}"));
        }

        Assert.True(bad.Count == 0, string.Join('\n', bad));
    }

    [Theory]
    [InlineData("1.60 to 2.40 A")]
    [InlineData("results.lefft.A")]
    [InlineData(".speed.at(2.5).kmh")]
    [InlineData("round(results.rate.per_min, \"1\")")]
    public void An_example_that_is_wrong_is_found(string example) => Assert.False(CanBeWritten(example));

    public static TheoryData<string> Places() => [.. ReferenceText.FormRows().Select(row => row.Place).Distinct()];

    private bool CanBeWritten(string example) => FormPlant.Ends.Any(end => FormPlant.Variants(example).Any(text => Loads(end, text)));

    private bool Loads(string end, string text)
    {
        var path = Path.Combine(_folder.FullName, "odd.yaml");
        var quoted = end.Contains($"'{FormPlant.Mark}'", StringComparison.Ordinal) ? text.Replace("'", "''", StringComparison.Ordinal) : text;
        File.WriteAllText(path, FormPlant.Sequence + end.Replace(FormPlant.Mark, quoted, StringComparison.Ordinal));
        return SequenceLoader.Load(path, ExpressionCache.None).Sequence is not null;
    }
}
