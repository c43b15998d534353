using AngleSharp.Dom;
using EolSequencer.Cli.Explaining;
using EolSequencer.Language.Expressions;
using EolSequencer.Station.Explaining;

namespace EolSequencer.Cli.Tests.Explaining;

/// <summary>A page lies about on a shop floor for years: what authors wrote must not break it, and nothing in it may run or reach out.</summary>
public sealed class PageTests : IDisposable
{
    private const string Hostile = "<script>alert(1)</script>&amp;\"'</td></table>";

    private readonly WordyPlant _plant = new();

    public void Dispose() => _plant.Dispose();

    [Fact]
    public void What_an_author_wrote_is_text_and_nothing_else()
    {
        _plant.Put("wordy.yaml", Brief($"judge: '{Hostile.Replace("'", "''", StringComparison.Ordinal)}'"));
        var page = PageReader.Read(Page());

        Assert.Empty(page.QuerySelectorAll("script"));
        Assert.Equal(Hostile, page.QuerySelector("p.prompt")!.TextContent);
        Assert.Single(page.QuerySelectorAll("table"));
    }

    [Fact]
    public void A_character_that_no_page_may_hold_is_replaced()
    {
        _plant.Put("wordy.yaml", Brief("judge: \"a\\u0001b\\uFFFEc 😀\""));

        Assert.Equal("a\uFFFDb\uFFFDc 😀", PageReader.Read(Page()).QuerySelector("p.prompt")!.TextContent);
    }

    [Fact]
    public void Everything_is_in_the_page_itself_and_nothing_runs()
    {
        var page = PageReader.Read(Page());

        Assert.Empty(page.QuerySelectorAll("script, link, iframe, object, embed, form, a[href]"));
        Assert.DoesNotContain(page.All.SelectMany(element => element.Attributes), attribute => attribute.Name.StartsWith("on", StringComparison.Ordinal));
        var picture = Assert.Single(page.QuerySelectorAll("img"));
        Assert.StartsWith("data:image/svg+xml;base64,", picture.GetAttribute("src"), StringComparison.Ordinal);
        Assert.Contains("<svg", System.Text.Encoding.UTF8.GetString(Convert.FromBase64String(picture.GetAttribute("src")!.Split(',')[1])), StringComparison.Ordinal);
        Assert.DoesNotContain("url(", page.QuerySelector("style")!.TextContent, StringComparison.Ordinal);
        Assert.DoesNotContain("@import", page.QuerySelector("style")!.TextContent, StringComparison.Ordinal);
    }

    [Fact]
    public void Each_text_says_its_language_and_each_step_has_a_box_to_tick()
    {
        var page = PageReader.Read(Page("es"));

        Assert.Equal("en", page.DocumentElement.GetAttribute("lang"));
        Assert.Equal("es", page.QuerySelector("p.prompt span")!.GetAttribute("lang"));
        Assert.Equal(page.QuerySelectorAll("tr.step").Length, page.QuerySelectorAll("tr.step td.box input[type=checkbox]").Length);
        Assert.All(page.QuerySelectorAll("input, img"), element => Assert.True(element.HasAttribute("aria-label") || element.HasAttribute("alt")));
        Assert.All(page.QuerySelectorAll(".caution"), caution => Assert.StartsWith("⚠ Caution: ", caution.TextContent, StringComparison.Ordinal));
    }

    [Fact]
    public void A_picture_that_has_gone_meanwhile_is_told_on_the_page()
    {
        var subject = Subject();
        File.Delete(_plant.PathOf("lamp.svg"));

        var page = PageReader.Read(ExplanationPage.Of(Explainer.Of(subject, "en")));

        Assert.Contains("The picture lamp.svg cannot be read", page.Body!.TextContent, StringComparison.Ordinal);
    }

    private string Page(string language = "en") => ExplanationPage.Of(Explainer.Of(Subject(), language));

    private Subject Subject()
    {
        var (subject, diagnostics) = SubjectFinder.Find(_plant.PathOf("wordy.yaml"), null, _plant.PathOf("order.yaml"), null, ExpressionCache.None);
        Assert.True(subject is not null, string.Join('\n', diagnostics));
        return subject;
    }

    private static string Brief(string action) => $$"""
        sequence: wordy
        revision: 1
        vehicle-type: box
        station-kind: startup
        devices: { bus: vehicle-bus }
        steps:
          - step: seen
            within: 9 s
            {{action}}

        """;
}
