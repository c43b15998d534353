using EolSequencer.Cli.Explaining;
using EolSequencer.Language.Expressions;
using EolSequencer.Station.Explaining;
using Snapshooter.Xunit3;

namespace EolSequencer.Cli.Tests.Explaining;

/// <summary>What people read must say everything that a step does, in the words and units of its author.</summary>
public sealed class ExplainedWordsTests : IDisposable
{
    private readonly WordyPlant _plant = new();

    public void Dispose() => _plant.Dispose();

    [Fact]
    public void Every_action_and_every_fact_has_its_line() => Snapshot.Match(Lines("order.yaml", "en", "station.yaml"));

    [Fact]
    public void The_page_says_the_same() => Snapshot.Match(ExplanationPage.Of(Of("order.yaml", "es", "station.yaml")));

    [Fact]
    public void Another_vehicle_gets_other_limits_units_and_steps()
    {
        var text = Lines("tow.yaml", "en", null);

        Assert.Contains("must be: 1.0 .. 3.0 A (limit lamp)", text, StringComparison.Ordinal);
        Assert.Contains("parts[transfer].part", text, StringComparison.Ordinal);
        Assert.Contains("\"Plug in the box.\"", text, StringComparison.Ordinal);
        Assert.DoesNotContain("Not planned", text, StringComparison.Ordinal);
        Assert.Contains("a device of kind dc-meter", text, StringComparison.Ordinal);
    }

    [Fact]
    public void A_text_that_lacks_the_language_comes_in_the_first_it_has() =>
        Assert.Contains("\"All are lit.\"", Lines("order.yaml", "fr", null), StringComparison.Ordinal);

    private string Lines(string order, string language, string? station) =>
        string.Join('\n', ExplanationLines.Of(Of(order, language, station)).Select(line => line.Text));

    private Explanation Of(string order, string language, string? station)
    {
        var (subject, diagnostics) = SubjectFinder.Find(
            _plant.PathOf("wordy.yaml"), station is null ? null : _plant.PathOf(station), _plant.PathOf(order), null, ExpressionCache.None);
        Assert.True(subject is not null, string.Join('\n', diagnostics));
        return Explainer.Of(subject, language);
    }
}
