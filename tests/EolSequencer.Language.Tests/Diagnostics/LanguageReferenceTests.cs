using EolSequencer.Language.Diagnostics;

namespace EolSequencer.Language.Tests.Diagnostics;

/// <summary>Whoever meets a code looks it up in the language reference: a code without a row helps nobody.</summary>
public sealed class LanguageReferenceTests
{
    // The examples behind have their own test.
    private static readonly string[] Reference =
        [.. File.ReadAllLines(Assert.Single(RepositoryFiles.Named("README.md"))).TakeWhile(line => line != "## Examples of every code")];

    [Fact]
    public void Every_code_has_its_row_in_the_language_reference() =>
        Assert.Empty(DiagnosticCatalogue.All.Select(RowOf).Except(Reference));

    [Fact]
    public void Every_row_of_the_language_reference_is_a_code() =>
        Assert.Empty(Reference.Where(IsRow).Except(DiagnosticCatalogue.All.Select(RowOf)));

    private static string RowOf(DiagnosticCode code)
    {
        var weight = code.Severity == Severity.Error ? "" : $" ({code.Severity.ToString().ToLowerInvariant()})";
        return $"| {code.Id} | {code.Title}{weight} | {code.Cure} |";
    }

    private static bool IsRow(string line) =>
        line.Length > 8 && line.StartsWith("| ", StringComparison.Ordinal) && line.AsSpan(2, 3).IndexOfAnyExceptInRange('A', 'Z') < 0 && char.IsAsciiDigit(line[5]);
}
