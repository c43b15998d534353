namespace EolSequencer.Language.Tests.Editing;

/// <summary>What is offered while somebody writes; the text around the caret is hardly ever whole then.</summary>
public sealed class CompletionTests
{
    [Theory]
    [InlineData("st‸", "steps", "always", "prepare", "cycle-time", "title")]
    [InlineData("steps:\n  - ‸", "step", "group", "together")]
    [InlineData("steps:\n  - st‸", "step", "group")]
    [InlineData("steps:\n  - step: a\n    re‸", "read", "ask", "retry", "require")]
    [InlineData("steps:\n  - step: a\n    read: meter.voltage\n    ‸", "expect", "within", "show", "if-missing", "uncertainty")]
    [InlineData("steps:\n  - step: a\n    read: meter.voltage\n    ‸\n  - step: b\n    wait: 2 s\n", "expect")]
    [InlineData("steps:\n  - { step: a, read: meter.voltage, ‸", "expect", "within")]
    [InlineData("steps:\n  - { step: a, read: meter.voltage, ex‸ }", "expect")]
    [InlineData("steps:\n  - group: g\n    steps:\n      - group: h\n        ‸", "steps", "use", "each", "any-order")]
    [InlineData("steps:\n  - group: g\n    defaults:\n      ‸", "within", "class", "on-fail")]
    [InlineData("steps:\n  - together:\n      one:\n        - step: a\n          ‸", "read", "ask", "wait")]
    [InlineData("steps:\n  - step: a\n    retry: { ‸ }", "times", "on", "pause")]
    public void Keys_by_place(string text, params string[] wanted) => Offers(text, wanted);

    [Theory]
    [InlineData("steps:\n  - step: a\n    class: ‸", "safety", "function", "other")]
    [InlineData("steps:\n  - { step: a, read: meter.voltage, on-fail: s‸ }", "continue", "stop", "ask")]
    [InlineData("steps:\n  - step: a\n    read: me‸", "bus", "meter")]
    [InlineData("steps:\n  - step: a\n    read: meter.‸", "voltage", "current", "range", "settled")]
    [InlineData("steps:\n  - step: a\n    read: meter.cur‸\n    expect: 1 .. 2 A\n", "voltage", "current")]
    [InlineData("steps:\n  - { step: a, read: 'meter.current[\"‸\"]' }", "lamp")]
    [InlineData("steps:\n  - step: a\n    set: bus.‸", "horn", "lamp", "write_vin")]
    [InlineData("steps:\n  - step: a\n    set: bus.horn\n    to: ‸", "yes", "no")]
    [InlineData("steps:\n  - group: g\n    use: ‸", "window")]
    [InlineData("steps:\n  - group: g\n    use: window\n    with: { ‸ }", "side")]
    [InlineData("steps:\n  - group: g\n    use: window\n    with: { side: ‸ }", "left", "right")]
    [InlineData("steps:\n  - step: a\n    place: ‸", "seat", "rear")]
    [InlineData("steps:\n  - step: a\n    compute: 1\n    unit: ‸", "V", "km/h", "1/min")]
    [InlineData("steps:\n  - step: a\n    read: meter.voltage\n    expect: ‸", "at least", "equals", "one of", "limits.")]
    [InlineData("steps:\n  - step: a\n    read: meter.voltage\n    expect: limits.‸", "rest", "idle", "ripple")]
    [InlineData("steps:\n  - step: a\n    read: meter.voltage\n    expect: 11.5 .. 13.0 ‸", "V", "mV")]
    [InlineData("steps:\n  - group: a\n    capture: [bus.‸]", "wheel")]
    public void Values_and_names_by_key(string text, params string[] wanted) => Offers(text, wanted);

    [Theory]
    [InlineData("steps:\n  - step: a\n    when: ‸", "vehicle", "order", "side")]
    [InlineData("steps:\n  - step: a\n    when: vehicle.‸", "drive", "tow", "vin")]
    [InlineData("steps:\n  - step: a\n    when: vehicle.drive == \"‸", "front", "all")]
    [InlineData("steps:\n  - { step: a, when: 'vehicle.rims != \"al‸\"', wait: 1 s }", "steel", "alloy")]
    [InlineData("steps:\n  - step: a\n    await: bus.speed.‸", "rpm", "deg_s")]
    [InlineData("steps:\n  - step: a\n    await: bus.brake && bus.door[‸", "\"left\"", "side")]
    [InlineData("steps:\n  - step: a\n    await: ab‸", "abs", "edges", "results")]
    [InlineData("steps:\n  - step: first\n    read: meter.voltage\n  - step: a\n    compute: results.‸", "first")]
    [InlineData("steps:\n  - step: first\n    read: meter.voltage\n  - step: a\n    compute: results.first.‸", "V", "mV", "verdict", "took", "or")]
    [InlineData("steps:\n  - group: g\n    steps:\n      - { step: inner, wait: 1 s }\n  - step: a\n    only-if: results.g.‸", "inner")]
    [InlineData("steps:\n  - group: g\n    each: { wheel: [fl, fr] }\n    steps:\n      - step: a\n        when: ‸", "wheel")]
    [InlineData("steps:\n  - step: a\n    compute: order.‸", "market", "software")]
    [InlineData("steps:\n  - step: a\n    scan: Scan.\n    expect: equals (vehicle.‸", "vin", "rims")]
    [InlineData("after-verdict:\n  - step: a\n    only-if: run.verdict == \"‸", "pass", "fail")]
    public void Names_of_an_expression(string text, params string[] wanted) => Offers(text, wanted);

    private const string Captures = "steps:\n  - group: g\n    capture: { channels: [bus.speed, { channel: bus.brake, every: 20 ms }, 'bus.wheel[\"fl\"]'] }\n    steps: [ { step: w, wait: 1 s } ]\n  - group: outer\n    steps:\n      - group: h\n        capture: [meter.voltage]\n        steps: [ { step: w, wait: 1 s } ]\n  - step: a\n    compute: ";

    [Theory]
    [InlineData("tr‸", "trace")]
    [InlineData("trace.‸", "g", "outer")]
    [InlineData("trace.outer.‸", "h")]
    [InlineData("trace.g.‸", "bus")]
    [InlineData("trace.g.bus.‸", "speed", "brake", "wheel")]
    [InlineData("trace.outer.h.meter.‸", "voltage")]
    [InlineData("trace.g.bus.speed.‸", "max", "mean", "between", "rpm")]
    [InlineData("trace.g.bus.speed.rpm.‸", "rises", "slope", "over", "max")]
    [InlineData("trace.g.bus.speed.max.‸", "rpm")]
    [InlineData("trace.g.bus.speed.max_at.‸", "s", "ms")]
    [InlineData("trace.g.bus.brake.‸", "edges", "time_on", "rises")]
    [InlineData("trace.g.bus.brake.rate.‸", "per_min")]
    [InlineData("trace.g.bus.wheel[‸", "\"fl\"")]
    public void What_groups_have_captured_and_its_features(string expression, params string[] wanted) => Offers(Captures + expression, wanted);

    [Fact]
    public void A_trace_has_what_its_group_captures_and_the_features_of_its_kind()
    {
        using var channels = EditedPlant.With(Captures + "trace.g.bus.‸");
        Assert.Equal(3, channels.Proposed.Count);
        using var quantity = EditedPlant.With(Captures + "trace.g.bus.speed.‸");
        Assert.DoesNotContain("slope", quantity.Proposed);
        using var groups = EditedPlant.With("steps:\n  - group: g\n    steps: [ { step: w, wait: 1 s } ]\n  - step: a\n    compute: trace.‸");
        Assert.Empty(groups.Proposed);
    }

    [Fact]
    public void What_a_key_cannot_have_is_not_offered()
    {
        using var plant = EditedPlant.With("steps:\n  - step: a\n    read: meter.voltage\n    ‸");
        Assert.DoesNotContain("until", plant.Proposed);
        Assert.DoesNotContain("read", plant.Proposed);
        Assert.DoesNotContain("ask", plant.Proposed);
    }

    [Fact]
    public void Units_follow_the_channel()
    {
        using var plant = EditedPlant.With("steps:\n  - step: a\n    read: meter.voltage\n    expect: 11.5 .. 13.0 ‸");
        Assert.DoesNotContain("bar", plant.Proposed);
    }

    [Theory]
    [InlineData("vehicle-types/odd.yaml", "vehicle-type: odd\noptions: { tow: { as: yes-no } }\necus: { gateway: { can: { request: 1, response: 2 } } }\nchannels:\n  a: { ‸", "data", "frame", "obd", "from")]
    [InlineData("vehicle-types/odd.yaml", "vehicle-type: odd\noptions: { tow: { as: yes-no } }\necus: { gateway: { can: { request: 1, response: 2 } } }\nchannels:\n  a: { from: ‸", "gateway", "ecus")]
    [InlineData("orders/T-9.yaml", "order: T-9\nvehicle-type: teal\noptions: { ‸", "drive", "tow")]
    [InlineData("orders/T-9.yaml", "order: T-9\nvehicle-type: teal\noptions: { drive: ‸", "front", "all")]
    [InlineData("orders/T-9.yaml", "order: T-9\nvehicle-type: ‸", "teal")]
    [InlineData("device-kinds/k.yaml", "device-kind: k\nsharing: ‸", "exclusive", "shared")]
    [InlineData("scripts/s.yaml", "operator-script: s\nanswers:\n  a: ‸", "ok", "not-ok", "nothing")]
    [InlineData("stations/s.yaml", "station: s\nstation-kind: ‸", "startup", "roller")]
    [InlineData("e.yaml", "expected-results: e\nstation: ‸", "startup_1")]
    [InlineData("e.yaml", "expected-results: e\ntests:\n  t:\n    order: ‸", "T-1")]
    [InlineData("e.yaml", "expected-results: e\ntests:\n  t:\n    steps:\n      rest: { ‸", "verdict", "is", "took")]
    [InlineData("e.yaml", "expected-results: e\ntests:\n  t:\n    steps:\n      rest: ‸", "not-needed")]
    [InlineData("e.yaml", "expected-results: e\nstation: startup_1\ntests:\n  t:\n    steps:\n      ‸", "rest", "lamps.lit", "brake.pedal")]
    [InlineData("e.yaml", "expected-results: e\nsequence: startup\ntests:\n  t:\n    steps: { la‸ }", "rest", "lamps.lit", "tell")]
    [InlineData("e.yaml", "expected-results: e\nsequence: startup\ntests:\n  t:\n    only: [la‸]", "rest", "lamps", "lamps.lit")]
    [InlineData("empty.yaml", "‸", "sequence", "vehicle-type", "order")]
    public void Files_of_every_kind(string path, string text, params string[] wanted)
    {
        using var plant = EditedPlant.File(path, text);
        Assert.Empty(wanted.Except(plant.Proposed));
    }

    [Fact]
    public void The_word_around_the_caret_is_replaced()
    {
        using var plant = EditedPlant.With("steps:\n  - step: a\n    read: meter.vo‸lt\n");
        var voltage = Assert.Single(plant.Proposals, one => one.Text == "voltage");
        Assert.Equal((8, 16), (voltage.Replaced.Start.Line, voltage.Replaced.Start.Column));
        Assert.Equal((8, 20), (voltage.Replaced.End.Line, voltage.Replaced.End.Column));
        Assert.Equal("number in V", voltage.Detail);
    }

    private static void Offers(string text, string[] wanted)
    {
        using var plant = EditedPlant.With(text);
        var proposed = plant.Proposed;
        Assert.True(!wanted.Except(proposed).Any(), $"not offered: {string.Join(", ", wanted.Except(proposed))}; offered: {string.Join(", ", proposed.Take(40))}");
    }
}
