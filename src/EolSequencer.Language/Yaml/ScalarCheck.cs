using EolSequencer.Language.Diagnostics;

namespace EolSequencer.Language.Yaml;

/// <summary>Looks at each scalar for what its author can hardly have meant.</summary>
internal static class ScalarCheck
{
    /// <summary>Reports the traps and hands on the scalar, mended where that is possible.</summary>
    /// <param name="inFlow">True within { } or [ ].</param>
    public static YamlScalar Mended(YamlScalar scalar, bool inFlow, Report report)
    {
        ReportTab(scalar, report);
        ReportSwallowedLine(scalar, report);
        return CutTextCheck.Mended(scalar, inFlow, report);
    }

    private static void ReportTab(YamlScalar scalar, Report report)
    {
        var source = scalar.Source;
        var tab = source.Text.IndexOf('\t', scalar.Start, scalar.End - scalar.Start);
        if (tab >= 0) report.Add(YamlCodes.TabInText, source.PlaceOf(tab, tab + 1), "a tab stands in this text, which looks like blanks");
    }

    private static void ReportSwallowedLine(YamlScalar scalar, Report report)
    {
        if (scalar.Style is ScalarStyle.Literal or ScalarStyle.Folded) return;
        var source = scalar.Source;
        var (first, last) = (source.LineOf(scalar.Start), source.LineOf(scalar.End));
        for (var line = first + 1; line <= last; line++)
        {
            var text = source.Line(line);
            var start = source.StartOfLine(line);
            if (scalar.IsPlain && LineShape.GluedColon(text) is var colon and >= 0)
            {
                report.Add(
                    YamlCodes.NoBlankAfterColon,
                    source.PlaceOf(start + colon, start + colon + 1),
                    $"no blank follows this colon, so the line became part of the text that begins in line {first}",
                    Quoting.ColonHint(source, start + colon));
            }
            else if (!scalar.IsPlain && LineShape.Key(text) is { } key)
            {
                report.Add(
                    YamlCodes.SwallowedLine,
                    source.PlaceOf(scalar.Start, scalar.Start + 1),
                    $"the text that begins here runs to line {last} and takes in {Shown.Quoted(key + ":")} of line {line}",
                    "close the quotes in this line; a long text goes into a block behind  |");
                return;
            }
        }
    }
}
