using EolSequencer.Language.Diagnostics;
using EolSequencer.Language.Source;
using EolSequencer.Language.Yaml.Faults;
using YamlDotNet.Core;

namespace EolSequencer.Language.Yaml;

/// <summary>
/// Reads the syntax of a file: YAML 1.2 without anchors, aliases, tags and merge keys, and with everything refused that
/// YAML would silently read as something else than its author sees.
/// </summary>
internal static class YamlReader
{
    /// <returns>
    /// The document, or <c>null</c> when it could not be read to its end. Other faults are reported and the document is
    /// handed on, mended where its author's meaning is plain, so that later passes can report theirs as well.
    /// </returns>
    public static YamlNode? Read(SourceText file, Report report)
    {
        if (!CharacterCheck.Passes(file, report)) return null;

        var findings = new Report();
        var builder = new TreeBuilder(file, findings);
        var gaveUp = Build(file, builder, findings);
        // What was found in the line where reading ended is a consequence of the same fault.
        report.Absorb(findings, finding => finding.Place.Line != gaveUp?.Place.Line);
        if (gaveUp is not null) report.Add(gaveUp);
        else if (builder.Root is null && !findings.HasErrors) report.Add(YamlCodes.EmptyFile, file.PlaceOf(0, 0), "the file holds no keys, at most comments");
        return gaveUp is null ? builder.Root : null;
    }

    private static Diagnostic? Build(SourceText file, TreeBuilder builder, Report findings)
    {
        var parser = new Parser(new StringReader(file.Text));
        while (true)
        {
            try
            {
                if (!parser.MoveNext()) return null;
            }
            catch (Exception fault)
            {
                // Some of the library's faults carry no place and are not of its own exception type.
                return FaultSite.Of(file, builder, fault).Explain();
            }

            // A file with that many faults is not what its author thinks; reading on would only take time.
            if (!builder.Accept(parser.Current!) || findings.LeftOut > 0) return null;
        }
    }
}
