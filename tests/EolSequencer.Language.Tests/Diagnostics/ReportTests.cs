using EolSequencer.Language.Diagnostics;
using EolSequencer.Model.Source;

namespace EolSequencer.Language.Tests.Diagnostics;

/// <summary>One check run tells an author about all faults, each once, in the order of the file, and never without end.</summary>
public sealed class ReportTests
{
    private static readonly DiagnosticCode Warning = new("TST001", Severity.Warning, "a title", "a cure");

    [Fact]
    public void A_finding_reads_as_place_severity_code_found_and_hint()
    {
        var report = new Report();
        report.Add(YamlCodes.NoValue, At(41, 20), "the key 'max' has no value", "write one");
        Assert.Equal("tyres.yaml:41:20: error YML020: the key 'max' has no value – write one", Assert.Single(report.InOrder).ToString());
    }

    [Fact]
    public void The_cure_of_the_code_is_the_hint_when_there_is_no_other()
    {
        var report = new Report();
        report.Add(Warning, SourcePlace.None, "found");
        Assert.Equal("warning TST001: found – a cure", Assert.Single(report.InOrder).ToString());
        Assert.False(report.HasErrors);
    }

    [Fact]
    public void The_same_finding_is_kept_once()
    {
        var report = new Report();
        report.Add(YamlCodes.NoValue, At(1, 1), "found");
        report.Add(YamlCodes.NoValue, At(1, 1), "found");
        report.Add(YamlCodes.NoValue, At(1, 2), "found");
        Assert.Equal(2, report.InOrder.Count);
        Assert.Equal(0, report.LeftOut);
    }

    [Fact]
    public void Findings_come_in_the_order_of_the_file()
    {
        var report = new Report();
        foreach (var (line, column) in new[] { (10, 1), (2, 5), (2, 3), (9, 9) }) report.Add(YamlCodes.NoValue, At(line, column), "found");
        report.Add(YamlCodes.NoValue, At(1, 1) with { File = "a.yaml" }, "found");
        Assert.Equal(
            ["a.yaml:1:1", "tyres.yaml:2:3", "tyres.yaml:2:5", "tyres.yaml:9:9", "tyres.yaml:10:1"],
            report.InOrder.Select(one => one.Place.ToString()));
    }

    [Fact]
    public void Beyond_the_bound_errors_are_counted_only_and_warnings_still_come_through()
    {
        var report = new Report();
        for (var line = 1; line <= Report.MostErrors + 5; line++) report.Add(YamlCodes.NoValue, At(line, 1), "found");
        report.Add(Warning, At(1, 1), "found");
        Assert.Equal(Report.MostErrors + 1, report.InOrder.Count);
        Assert.Equal(5, report.LeftOut);
        Assert.True(report.HasErrors);
    }

    private static SourcePlace At(int line, int column) => new("tyres.yaml", line, column, line, column + 1);
}
