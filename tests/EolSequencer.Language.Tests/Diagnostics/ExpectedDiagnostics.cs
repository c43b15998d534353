using System.Globalization;
using System.Text.RegularExpressions;
using EolSequencer.Language.Diagnostics;
using EolSequencer.Language.Source;

namespace EolSequencer.Language.Tests.Diagnostics;

/// <summary>
/// Documents that state under the spot what they expect, and nothing else may be found:
/// <code>
/// expect: 2.4 .. 2.0 bar
/// #              ^ expect error SEQ014
/// </code>
/// The caret points at the first character; several carets state the length as well. Without a caret the <c>#</c> itself
/// points. Several such lines under one another speak of the same line.
/// </summary>
internal static partial class ExpectedDiagnostics
{
    /// <summary>Runs a check over a document and compares what it reports with what the document states.</summary>
    public static void Hold(string document, Action<SourceText, Report> check)
    {
        var report = new Report();
        check(Texts.Source(document), report);
        Hold([(Texts.FileName, document)], report.InOrder);
    }

    /// <summary>Compares what was found in several documents with what they state.</summary>
    /// <param name="documents">Each with the file name that diagnostics show.</param>
    public static void Hold(IEnumerable<(string File, string Document)> documents, IEnumerable<Diagnostic> diagnostics)
    {
        var found = diagnostics.ToList();
        var missing = new List<Expectation>();
        foreach (var expected in documents.SelectMany(document => In(document.File, document.Document)))
        {
            var match = found.FindIndex(expected.IsMetBy);
            if (match < 0) missing.Add(expected);
            else found.RemoveAt(match);
        }

        if (missing.Count == 0 && found.Count == 0) return;
        Assert.Fail(string.Join('\n', [.. missing.Select(one => $"missing: {one}"), .. found.Select(one => $"not expected: {one}")]));
    }

    private static IEnumerable<Expectation> In(string file, string document)
    {
        var target = 0;
        var lines = document.ReplaceLineEndings("\n").Split('\n');
        for (var number = 1; number <= lines.Length; number++)
        {
            var match = Pattern().Match(lines[number - 1]);
            if (!match.Success)
            {
                target = number;
                continue;
            }

            var carets = match.Groups["carets"];
            yield return new Expectation(
                file,
                match.Groups["code"].Value,
                match.Groups["severity"].Value,
                target,
                (carets.Length > 0 ? carets.Index : match.Groups["hash"].Index) + 1,
                carets.Length > 1 ? carets.Length : null);
        }
    }

    [GeneratedRegex(@"^\s*(?<hash>#)\s*(?<carets>\^*)\s*expect (?<severity>error|warning|information) (?<code>[A-Z]{3}\d{3})\s*$")]
    private static partial Regex Pattern();

    private sealed record Expectation(string File, string Code, string SeverityWord, int Line, int Column, int? Length)
    {
        public bool IsMetBy(Diagnostic one) =>
            one.Code.Id == Code
            && one.Place.File == File
            && one.Severity.ToString().Equals(SeverityWord, StringComparison.OrdinalIgnoreCase)
            && (one.Place.Line, one.Place.Column) == (Line, Column)
            && (Length is null || (one.Place.EndLine, one.Place.EndColumn) == (Line, Column + Length));

        public override string ToString() =>
            string.Create(CultureInfo.InvariantCulture, $"{File}:{Line}:{Column}: {SeverityWord} {Code}") + (Length is null ? "" : $", {Length} characters long");
    }
}
