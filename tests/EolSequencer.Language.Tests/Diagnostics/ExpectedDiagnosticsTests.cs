using EolSequencer.Language.Diagnostics;
using EolSequencer.Language.Source;
using Xunit.Sdk;

namespace EolSequencer.Language.Tests.Diagnostics;

/// <summary>Other tests lean on documents that state what they expect, so these must notice when it does not come.</summary>
public sealed class ExpectedDiagnosticsTests
{
    private const string Document = """
        first: 1
        # expect error YML014
        second: 2
        #       ^ expect error YML020
        """;

    [Fact]
    public void Findings_at_the_stated_places_pass() => ExpectedDiagnostics.Hold(Document, (source, report) =>
    {
        report.Add(YamlCodes.NoValue, source.PlaceOf(source.OffsetOf(3, 9), source.OffsetOf(3, 10)), "found");
        report.Add(YamlCodes.DuplicateKey, source.PlaceOf(0, 5), "found");
    });

    [Theory]
    [InlineData(3, 8)]
    [InlineData(4, 9)]
    public void A_finding_elsewhere_fails(int line, int column) => Fails((source, report) =>
    {
        report.Add(YamlCodes.NoValue, source.PlaceOf(source.OffsetOf(line, column), source.OffsetOf(line, column)), "found");
        report.Add(YamlCodes.DuplicateKey, source.PlaceOf(0, 5), "found");
    });

    [Fact]
    public void A_missing_finding_fails() => Fails((source, report) => report.Add(YamlCodes.DuplicateKey, source.PlaceOf(0, 5), "found"));

    [Fact]
    public void A_finding_too_many_fails() => Fails((source, report) =>
    {
        report.Add(YamlCodes.NoValue, source.PlaceOf(source.OffsetOf(3, 9), source.OffsetOf(3, 10)), "found");
        report.Add(YamlCodes.DuplicateKey, source.PlaceOf(0, 5), "found");
        report.Add(YamlCodes.DuplicateKey, source.PlaceOf(0, 5), "found something else");
    });

    [Fact]
    public void Several_carets_state_the_length()
    {
        const string document = "key: 12\n#    ^^ expect error YML020\n";
        ExpectedDiagnostics.Hold(document, (source, report) => report.Add(YamlCodes.NoValue, source.PlaceOf(5, 7), "found"));
        Assert.Throws<FailException>(() =>
            ExpectedDiagnostics.Hold(document, (source, report) => report.Add(YamlCodes.NoValue, source.PlaceOf(5, 6), "found")));
    }

    private static void Fails(Action<SourceText, Report> check) => Assert.Throws<FailException>(() => ExpectedDiagnostics.Hold(Document, check));
}
