namespace EolSequencer.Language.Tests.Editing;

/// <summary>What a word means, and where it is described.</summary>
public sealed class LookupTests
{
    [Theory]
    [InlineData("steps:\n  - { step: a, read: bus.fe‸ed }", "feed: number in A", "data identifier 0x2104 of gateway", "range: 0 .. 655.35 A, one step 0.01 A")]
    [InlineData("steps:\n  - { step: a, read: bus.sp‸eed }", "speed: number in rpm", "parameter 0x0C of service 01", "only when vehicle.powertrain == \"petrol\"")]
    [InlineData("steps:\n  - { step: a, await: bus.br‸ake }", "brake: yes or no", "broadcast in frame 0x1A0 every 20 ms")]
    [InlineData("steps:\n  - { step: a, await: 'bus.coolant.celsius > 3 && bus.tri‸m.deg > 1' }", "trim: number in deg", "range: -3276.8 .. 3276.7 deg")]
    [InlineData("steps:\n  - { step: a, set: bus.ho‸rn, to: yes }", "horn: is set to yes or no", "service 2F", "needs a caution")]
    [InlineData("steps:\n  - { st‸ep: a, wait: 1 s }", "step: id, unique in its group")]
    [InlineData("steps:\n  - step: a\n    wait: 1 s\n    when‸: vehicle.tow\n", "when: does it apply to this vehicle?", "C#")]
    [InlineData("steps:\n  - { step: a, read: meter.voltage, expect: 1 .. 2 V‸ }", "V: voltage", "mV")]
    [InlineData("steps:\n  - { step: a, read: meter.voltage, expect: limits.ripp‸le }", "ripple: limit with 2 rows", "0 .. 500 mV", "at most 0.2 V")]
    [InlineData("steps:\n  - { step: a, wait: 1 s, when: vehicle.dri‸ve == \"all\" }", "drive: one of front, all")]
    public void A_word_is_explained(string text, params string[] wanted)
    {
        using var plant = EditedPlant.With(text);
        var found = plant.Explained;
        Assert.NotNull(found);
        var said = string.Join('\n', found.Lines.Prepend(found.Title));
        Assert.True(said.StartsWith(wanted[0], StringComparison.Ordinal), said);
        foreach (var part in wanted) Assert.Contains(part, said, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("trace.g.bus.speed.rpm.ri‸ses(40)", "rises: the first moment", ".rises(level)", ".rises(from, to): the first moment at which it reaches the second level")]
    [InlineData("trace.g.bus.speed.ma‸x.rpm", "max: the largest reading")]
    [InlineData("trace.g.bus.spe‸ed.max.rpm", "speed: number in rpm", "parameter 0x0C of service 01")]
    [InlineData("trace.‸g.bus.speed.max.rpm", "g: captures bus.speed")]
    public void A_trace_is_explained(string expression, params string[] wanted) =>
        A_word_is_explained($"steps:\n  - {{ group: g, capture: [bus.speed], steps: [ {{ step: w, wait: 1 s }} ] }}\n  - step: a\n    compute: {expression}\n", wanted);

    [Fact]
    public void A_step_of_a_test_is_explained_and_leads_to_the_sequence()
    {
        using var plant = EditedPlant.File("e.yaml", "expected-results: e\nstation: startup_1\ntests:\n  t:\n    steps:\n      lamps[fog].l‸it: pass\n");
        Assert.StartsWith("lamps.lit: ", plant.Explained?.Title, StringComparison.Ordinal);
        Assert.Equal(("sequences/startup.yaml", "lit"), plant.Definition);
    }

    [Theory]
    [InlineData("steps:\n  - { group: g, use: win‸dow, with: { side: left } }", "fragments/window.yaml", "window")]
    [InlineData("steps:\n  - { step: a, read: bus.fe‸ed }", "vehicle-types/teal.yaml", "feed")]
    [InlineData("steps:\n  - { step: a, read: me‸ter.voltage }", "device-kinds/supply-meter.yaml", "supply-meter")]
    [InlineData("steps:\n  - { step: a, read: meter.volt‸age }", "device-kinds/supply-meter.yaml", "voltage")]
    [InlineData("steps:\n  - { step: a, set: bus.ho‸rn, to: yes }", "vehicle-types/teal.yaml", "horn")]
    [InlineData("steps:\n  - { step: a, read: meter.voltage, expect: limits.re‸st }", "vehicle-types/teal.yaml", "rest")]
    [InlineData("steps:\n  - { step: a, wait: 1 s, when: vehicle.t‸ow }", "vehicle-types/teal.yaml", "tow")]
    [InlineData("steps:\n  - { step: a, wait: 1 s, place: re‸ar }", "plant.yaml", "rear")]
    [InlineData("steps:\n  - { step: first, read: meter.voltage }\n  - { step: a, compute: results.fir‸st.V }", "sequences/probe.yaml", "7")]
    [InlineData("steps:\n  - { step: a, wait: 1 s, when: 'si‸de == \"left\"' }", "sequences/probe.yaml", "5")]
    public void A_name_leads_to_where_it_is_described(string text, string path, string name)
    {
        using var plant = EditedPlant.With(text);
        Assert.Equal((path, name), plant.Definition);
    }

    [Fact]
    public void The_head_of_a_file_leads_to_other_files()
    {
        using var type = EditedPlant.File("sequences/other.yaml", "sequence: other\nvehicle-type: te‸al\n");
        Assert.Equal(("vehicle-types/teal.yaml", "teal"), type.Definition);
        using var kind = EditedPlant.File("sequences/other.yaml", "sequence: other\nvehicle-type: teal\ndevices: { meter: supply-‸meter }\n");
        Assert.Equal(("device-kinds/supply-meter.yaml", "supply-meter"), kind.Definition);
    }

    [Theory]
    [InlineData("# nothing ‸ to say\nsteps: []")]
    [InlineData("steps:\n  - { step: a, ask: Press ‸it. }")]
    [InlineData("steps:\n  - { step: a, read: metre.vol‸tage }")]
    public void What_means_nothing_is_not_explained(string text)
    {
        using var plant = EditedPlant.With(text);
        Assert.Null(plant.Explained);
        Assert.Null(plant.Definition);
    }
}
