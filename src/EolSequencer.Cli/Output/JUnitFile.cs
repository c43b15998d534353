using System.Globalization;
using System.Text;
using System.Xml;
using System.Xml.Linq;
using EolSequencer.Rehearsal.ExpectedResults;

namespace EolSequencer.Cli.Output;

/// <summary>
/// Tests for a build server, in the XML that tools of the JUnit family write: <c>testsuites</c>, a <c>testsuite</c> for each
/// file, a <c>testcase</c> for each test, in it a <c>failure</c> for each thing that came out otherwise, or an <c>error</c>
/// when the test could not be run.
/// </summary>
/// <remarks>
/// Times are virtual seconds, and no date or host stands in it: the same tests give the same bytes. Attributes are those that
/// every published schema of the form knows.
/// </remarks>
internal static class JUnitFile
{
    private static readonly XmlWriterSettings Form = new() { Indent = true, NewLineChars = "\n", Encoding = new UTF8Encoding(false), CheckCharacters = true };

    /// <summary>Writes the file; what kept it from being written, or null.</summary>
    public static string? Write(string path, IReadOnlyList<TestedFile> files)
    {
        try
        {
            using var writer = XmlWriter.Create(path, Form);
            Of(files).Save(writer);
            return null;
        }
        catch (Exception fault) when (fault is IOException or UnauthorizedAccessException or ArgumentException or NotSupportedException)
        {
            return $"{path} cannot be written: {fault.Message}";
        }
    }

    /// <summary>The document.</summary>
    public static XDocument Of(IReadOnlyList<TestedFile> files) => new(new XElement(
        "testsuites",
        new XAttribute("name", "eol test"),
        Numbers([.. files.SelectMany(file => file.Outcomes)]),
        files.Select(file => new XElement(
            "testsuite",
            new XAttribute("name", file.File.Id),
            new XAttribute("file", file.File.Path),
            Numbers(file.Outcomes),
            file.Outcomes.Select(outcome => Case(file, outcome))))));

    private static XAttribute[] Numbers(IReadOnlyCollection<ExpectedOutcome> outcomes) =>
    [
        new("tests", outcomes.Count),
        new("failures", outcomes.Count(outcome => outcome.Trouble is null && !outcome.HasPassed)),
        new("errors", outcomes.Count(outcome => outcome.Trouble is not null)),
        new("time", Seconds(outcomes.Sum(outcome => outcome.Took.TotalSeconds))),
    ];

    private static XElement Case(TestedFile file, ExpectedOutcome outcome) => new(
        "testcase",
        new XAttribute("name", outcome.Test.Name),
        new XAttribute("classname", file.File.Id),
        new XAttribute("time", Seconds(outcome.Took.TotalSeconds)),
        outcome.Misses.Select(miss => Told("failure", "expectation", $"{miss.Of}: expected {miss.Expected}, found {miss.Found}", TestedFile.LineOf(miss))),
        outcome.Trouble is { } trouble ? Told("error", "rehearsal", trouble, $"{outcome.Test.Place}: {trouble}") : null);

    private static XElement Told(string name, string type, string message, string text) =>
        new(name, new XAttribute("type", type), new XAttribute("message", Clean(message)), Clean(text));

    private static string Seconds(double seconds) => seconds.ToString("0.000", CultureInfo.InvariantCulture);

    // A scanned text may hold characters that no XML document can.
    private static string Clean(string text) => string.Concat(text.EnumerateRunes().Select(letter => IsXml(letter) ? letter.ToString() : "\uFFFD"));

    private static bool IsXml(Rune letter) => letter.Utf16SequenceLength == 2 || XmlConvert.IsXmlChar((char)letter.Value);
}
