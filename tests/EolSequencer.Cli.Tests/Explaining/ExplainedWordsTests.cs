using EolSequencer.Cli.Explaining;
using EolSequencer.Language.Expressions;
using EolSequencer.Language.Loading;
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

    /// <summary>As the station does: one screen, so one caution in front of it and one clearing up behind it.</summary>
    [Fact]
    public void The_turns_of_an_any_order_group_share_its_caution_and_its_always()
    {
        File.WriteAllText(_plant.PathOf("beside.yaml"), """
            sequence: beside
            revision: 1
            vehicle-type: box
            station-kind: startup
            devices: { bus: vehicle-bus }
            defaults: { within: 5 s }
            steps:
              - group: turn
                any-order: true
                each: { side: [left, right] }
                caution: Hands off.
                steps: [ { step: look, judge: It turns. } ]
                always: [ { step: calm, wait: 1 s } ]

            """);
        var (subject, diagnostics) = SubjectFinder.Find(_plant.PathOf("beside.yaml"), null, _plant.PathOf("order.yaml"), null, ExpressionCache.None);
        Assert.True(subject is not null, string.Join('\n', diagnostics));

        var explanation = Explainer.Of(subject, "en");
        var planned = SequenceLoader.Plan(_plant.PathOf("beside.yaml"), ExpressionCache.None).Plan!.Vehicles;

        Assert.Equal((3, TimeSpan.FromSeconds(9)), (explanation.Steps.Count(), explanation.Planned));
        Assert.All(planned, vehicle => Assert.Equal((3, TimeSpan.FromSeconds(9)), (vehicle.Steps, vehicle.Time)));
    }

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
