using EolSequencer.Language.Diagnostics;
using EolSequencer.Language.Expressions;
using EolSequencer.Language.Loading;
using EolSequencer.Model.Judging;
using EolSequencer.Model.Sequences;

namespace EolSequencer.Language.Tests.Binding;

/// <summary>A plant says once how it decides; a step that says otherwise is heard, one that cannot be guarded is left alone.</summary>
public sealed class DecisionDefaultTests : IDisposable
{
    private readonly TestPlant _plant = new();

    public DecisionDefaultTests()
    {
        var plant = File.ReadAllText(_plant.PathOf("plant.yaml"));
        _plant.Put("plant.yaml", plant.Replace("decision: simple", "decision: guarded", StringComparison.Ordinal));
    }

    [Fact]
    public void The_nearest_word_decides()
    {
        var sequence = Load("""
              - { step: plain, read: meter.voltage, expect: 9 .. 16 V, uncertainty: 0.1 V }
              - { step: unstated, read: meter.voltage, expect: 9 .. 16 V }
              - { step: own, read: meter.voltage, expect: 9 .. 16 V, uncertainty: 0.1 V, decision: simple }
              - group: inner
                defaults: { decision: simple }
                steps:
                  - { step: around, read: meter.voltage, expect: 9 .. 16 V, uncertainty: 0.1 V }
                  - { step: again, read: meter.voltage, expect: 9 .. 16 V, uncertainty: 0.1 V, decision: guarded }
            """).Sequence!;
        var steps = sequence.Steps.OfType<Step>().Concat(sequence.Steps.OfType<Group>().SelectMany(group => group.Children.OfType<Step>()));
        Assert.Equal(
            [("plain", Decision.Guarded), ("unstated", Decision.Simple), ("own", Decision.Simple), ("around", Decision.Simple), ("again", Decision.Guarded)],
            steps.Select(step => (step.Id, step.Decision)));
    }

    [Fact]
    public void An_uncertainty_too_large_for_its_window_is_refused_by_the_plants_rule_too() => Assert.Contains(
        Load("  - { step: narrow, read: meter.voltage, expect: 12.0 .. 12.3 V, uncertainty: 0.2 V }").Diagnostics,
        finding => finding.Code == ExpectationCodes.TooUncertain);

    public void Dispose() => _plant.Dispose();

    private LoadResult Load(string steps) => SequenceLoader.Load(
        _plant.Put("sequences/decided.yaml", $"""
            sequence: decided
            revision: 1
            vehicle-type: teal
            station-kind: startup
            devices: {"{ bus: vehicle-bus, meter: supply-meter }"}
            steps:
            {steps}
            """),
        ExpressionCache.None);
}
