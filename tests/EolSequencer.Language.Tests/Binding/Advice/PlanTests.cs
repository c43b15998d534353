using EolSequencer.Language.Expressions;
using EolSequencer.Language.Loading;

namespace EolSequencer.Language.Tests.Binding.Advice;

/// <summary>Who plans a station by these numbers wants every vehicle that can come, and times that can be added up by hand.</summary>
public sealed class PlanTests : IDisposable
{
    private const string Head = "sequence: odd\nrevision: 1\nvehicle-type: teal\nstation-kind: startup\ndevices: { bus: vehicle-bus, meter: supply-meter }\ndefaults: { within: 60 s, every: 1 s }\n";

    private readonly TestPlant _plant = new();

    public void Dispose() => _plant.Dispose();

    [Theory]
    [InlineData("{ step: a, wait: 3 s }", 3)]
    [InlineData("{ step: a, sample: meter.voltage, for: 4 s, reduce: mean, expect: 1 .. 2 V }", 4)]
    [InlineData("{ step: a, await: bus.awake, takes: 2 s .. 6 s, lasting: 1 s }", 5)]
    [InlineData("{ step: a, await: bus.awake, takes: .. 2 s }", 2)]
    [InlineData("{ step: a, ask: Brake., until: bus.brake }", 4)]
    [InlineData("{ step: a, ask: Brake., until: bus.brake, planned: 9 s, caution: Careful. }", 11)]
    [InlineData("{ step: a, judge: It is lit. }", 3)]
    [InlineData("{ step: a, read: meter.voltage, expect: 1 .. 2 V }", 0.05)]
    [InlineData("{ group: a, each: { door: [left, rear] }, steps: [ { step: b, wait: 3 s } ] }", 6)]
    [InlineData("{ group: a, any-order: true, each: { door: [left, rear] }, steps: [ { step: b, judge: It shuts. } ] }", 6)]
    [InlineData("{ group: a, any-order: true, each: { door: [left, rear] }, caution: Careful., always: [ { step: c, wait: 1 s } ], steps: [ { step: b, judge: It shuts. } ] }", 9)]
    [InlineData("{ group: a, each: { door: [left, rear] }, caution: Careful., always: [ { step: c, wait: 1 s } ], steps: [ { step: b, judge: It shuts. } ] }", 12)]
    [InlineData("{ group: a, caution: Careful., steps: [ { step: b, wait: 3 s } ] }", 5)]
    [InlineData("{ together: { one: [ { step: a, wait: 3 s } ], other: [ { step: b, wait: 5 s } ] } }", 5)]
    [InlineData("{ together: { one: [ { step: a, judge: It is lit. } ], other: [ { step: b, judge: It is dark. }, { step: c, wait: 1 s } ] } }", 6)]
    [InlineData("{ group: a, use: window, with: { side: left, travel: 5 s } }", 6)]
    public void The_planned_time_of_a_step_is_what_the_reference_says(string step, decimal seconds)
    {
        var plan = Plan($"steps: [ {step} ]\n");

        Assert.All(plan.Vehicles, vehicle => Assert.Equal(TimeSpan.FromSeconds((double)seconds), vehicle.Time));
    }

    [Fact]
    public void What_the_plant_plans_for_a_prompt_holds_where_a_step_says_nothing()
    {
        _plant.Replace("plant.yaml", "plant: millrace\nzone: UTC\nroute: [startup]\nplanned: { judge: 7 s }\n");

        Assert.Equal(TimeSpan.FromSeconds(7), Plan("steps: [ { step: a, judge: It is lit. } ]\n").Vehicles[0].Time);
    }

    [Fact]
    public void Every_combination_that_can_be_built_is_planned_with_its_own_steps()
    {
        var plan = Plan("""
            steps:
              - { step: all, wait: 1 s }
              - { step: hook, when: vehicle.tow, judge: A hook is fitted. }
              - { group: units, each: { ecu: ecus }, steps: [ { step: awake, read: "bus.answers[ecu]", expect: yes } ] }

            """);

        Assert.Equal((24, 8, false), (plan.Vehicles.Length, plan.Impossible, plan.IsPairwise));
        Assert.Equal(["drive", "powertrain", "rims", "tow", "order.market"], plan.Options);
        Assert.All(plan.Vehicles, vehicle =>
        {
            var (petrol, tow) = (vehicle.Values[1] == "petrol" ? 1 : 0, vehicle.Values[3] == "yes" ? 1 : 0);
            Assert.Equal((1 + tow + 2 + petrol, tow + 2 + petrol), (vehicle.Steps, vehicle.Judged));
            Assert.Equal(TimeSpan.FromMilliseconds(1000 + tow * 3000 + (2 + petrol) * 50), vehicle.Time);
        });
    }

    [Fact]
    public void Of_more_than_4096_combinations_every_two_values_are_planned_together()
    {
        var options = string.Join(", ", Enumerable.Range(0, 13).Select(number => $"o{number}: {{ as: yes-no }}"));
        _plant.Replace("plant.yaml", "plant: millrace\nzone: UTC\nroute: [startup]\n");
        _plant.Replace("vehicle-types/teal.yaml", $"vehicle-type: teal\noptions: {{ {options} }}\nimpossible: [vehicle.o0 && vehicle.o12]\necus: {{ gateway: {{ can: {{ request: 0x710, response: 0x718 }} }} }}\nchannels: {{ awake: {{ from: gateway, service: presence, as: yes-no }} }}\n");

        var plan = Plan("steps: [ { step: a, await: bus.awake }, { step: b, read: meter.voltage, expect: 1 .. 2 V } ]\n");

        Assert.True(plan.IsPairwise);
        Assert.Null(plan.Impossible);
        Assert.InRange(plan.Vehicles.Length, 4, 20);
        Assert.DoesNotContain(plan.Vehicles, vehicle => vehicle.Values[0] == "yes" && vehicle.Values[12] == "yes");
        Assert.Contains(plan.Vehicles, vehicle => vehicle.Values[0] == "yes" && vehicle.Values[11] == "yes");
    }

    private SequencePlan Plan(string steps)
    {
        var result = SequenceLoader.Plan(_plant.Put("sequences/odd.yaml", Head + steps), ExpressionCache.None);
        Assert.NotNull(result.Plan);
        return result.Plan;
    }
}
