using EolSequencer.Engine.Planning;
using EolSequencer.Language.Expressions;
using EolSequencer.Language.Loading;
using EolSequencer.Station.Retesting;
using EolSequencer.Station.Tests.Identifying;

namespace EolSequencer.Station.Tests.Retesting;

/// <summary>A retest that leaves out what hangs on a failed step passes a vehicle that nobody tested.</summary>
public sealed class RetestListTests : IDisposable
{
    private const string Steps = """
        sequence: again
        revision: 1
        vehicle-type: box
        station-kind: startup
        devices: { bus: vehicle-bus }
        defaults: { within: 10 s }
        prepare:
          - { step: ready, judge: Ready? }
        steps:
          - { step: alone, judge: Alone? }
          - group: power
            steps:
              - { step: live, judge: Is it live? }
              - { step: fuse, judge: Is the fuse whole?, class: safety }
          - group: gauge
            each: { side: [left, right] }
            steps:
              - { step: value, enter: Read it., expect: 1 .. 2 V }
              - { step: twice, compute: results.value.V * 2, unit: V, expect: 2 .. 4 V }
          - group: lights
            depends-on: power
            steps:
              - group: front
                steps:
                  - { step: low, judge: Is it lit? }
                  - { step: high, judge: Is it lit? }
              - group: rear
                depends-on: front.low
                steps:
                  - { step: tail, judge: Is it lit? }
          - { step: sum, compute: 'results.gauge["left"].value.V + 1', unit: V, expect: 2 .. 3 V }
          - group: coding
            resume: repeat
            steps:
              - { group: first, steps: [ { step: one, judge: One? } ] }
              - { group: second, steps: [ { step: two, judge: Two? } ] }
          - { step: towing, when: vehicle.tow, judge: Does it tow? }

        """;

    private readonly SmallPlant _plant = new();
    private readonly Plan _whole;

    public RetestListTests()
    {
        _plant.Put("again.yaml", Steps);
        var loaded = SequenceLoader.Load(_plant.PathOf("again.yaml"), ExpressionCache.None);
        Assert.Empty(loaded.Diagnostics.Select(one => one.ToString()));
        _whole = Planner.For(loaded.Sequence!, OrderLoader.Load(_plant.PathOf("orders/S-1.yaml"), ExpressionCache.None).Order!);
    }

    [Theory]
    [InlineData("alone", "alone")]
    [InlineData("gauge[right].value", "gauge[right]")]
    [InlineData("gauge[left].value", "gauge[left] sum")] // what is computed of it, and its own group only
    [InlineData("gauge[left].twice", "gauge[left]")]
    [InlineData("sum", "gauge[left] sum")] // what it is computed of
    [InlineData("power.live", "power lights.front lights.rear")] // what depends on its group, with the safety step beside it
    [InlineData("lights.rear.tail", "power lights.front lights.rear")] // what it depends on, as far as that goes
    [InlineData("coding.second.two", "coding")] // whole, as it says resume: repeat
    [InlineData("lights.front.high sum", "power gauge[left] lights.front sum")]
    [InlineData("ready", "")] // prepare runs anyhow
    [InlineData("towing", "")] // does not apply to this vehicle
    public void A_retest_repeats_what_did_not_pass_and_what_belongs_to_it(string open, string repeated) =>
        Assert.Equal(repeated, string.Join(' ', RetestList.Of(_whole, open.Split(' ').ToHashSet())));

    [Fact]
    public void Everything_that_did_not_pass_is_always_in_the_list()
    {
        var steps = Plan.StepsOf(_whole.Steps).Select(step => step.Id).ToList();
        for (var mask = 1; mask < 1 << steps.Count; mask += 37)
        {
            var open = steps.Where((_, at) => (mask >> at & 1) == 1).ToHashSet();
            var list = RetestList.Of(_whole, open);
            Assert.All(open, step => Assert.Contains(list, part => step == part || step.StartsWith(part + ".", StringComparison.Ordinal)));
        }
    }

    public void Dispose() => _plant.Dispose();
}
