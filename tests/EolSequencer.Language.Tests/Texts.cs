using System.Text;
using EolSequencer.Language.Diagnostics;
using EolSequencer.Language.Source;
using EolSequencer.Language.Yaml;

namespace EolSequencer.Language.Tests;

/// <summary>Documents that tests write on the spot.</summary>
internal static class Texts
{
    public const string FileName = "test.yaml";

    public static SourceText Source(string text)
    {
        var report = new Report();
        return SourceText.TryDecode(FileName, Encoding.UTF8.GetBytes(text), report)
            ?? throw new ArgumentException(string.Join('\n', report.InOrder), nameof(text));
    }

    public static (YamlNode? Root, Report Report) Read(string text)
    {
        var report = new Report();
        return (YamlReader.Read(Source(text), report), report);
    }

    /// <summary>Reads a document that has no faults.</summary>
    public static YamlNode ReadWell(string text)
    {
        var (root, report) = Read(text);
        Assert.Empty(report.InOrder);
        return Assert.IsAssignableFrom<YamlNode>(root);
    }

    /// <summary>The value of the first key, in a document that has no faults.</summary>
    public static YamlScalar FirstScalar(string text) =>
        Assert.IsType<YamlScalar>(Assert.IsType<YamlMap>(ReadWell(text)).Entries[0].Value);

    /// <summary>The only finding of a document.</summary>
    public static Diagnostic OnlyFinding(string text) => Assert.Single(Read(text).Report.InOrder);
}
