using System.Collections.Immutable;
using EolSequencer.Model.Values;
using EolSequencer.Records.Administration;
using EolSequencer.Records.Holds;
using EolSequencer.Records.Tests.Samples;
using static EolSequencer.Model.Judging.Verdict;

namespace EolSequencer.Records.Tests.Holds;

/// <summary>When a part lot turns out bad, every vehicle that has it must stay, also the one that is built while people still talk.</summary>
public sealed class HoldTests : IDisposable
{
    private const string Other = "9Z9RR1N42TF000018";

    private readonly Floor _floor = new();

    private HoldService Office => _floor.Crew.Office.Holds;

    [Fact]
    public void A_hold_by_part_lot_and_time_keeps_back_those_that_match_and_later_ones_too()
    {
        Build(SampleRun.Vin, "L-7");
        Build(Other, "L-8");
        var query = new HoldQuery([], Fact: "battery_lot", Value: "L-7", From: SampleRun.Wall, Until: SampleRun.Wall.AddHours(1));

        var hold = Crew.Done(Office.Place(_floor.Crew["quinn"], query, "cells swell"));

        Assert.Equal((1, "hold-0001"), (hold.Matched, hold.Id));
        Assert.Equal([SampleRun.Vin], _floor.Record.Holds.Vehicles(query));
        Assert.Contains("hold hold-0001: cells swell", Against(SampleRun.Vin));
        Assert.Empty(Against(Other));

        Build(Other, "L-7");
        Assert.Contains("hold hold-0001: cells swell", Against(Other));
        _floor.Crew.AssertWhole();
    }

    [Fact]
    public void The_time_begins_with_its_first_moment_and_ends_before_its_last()
    {
        Build(SampleRun.Vin, "L-7");

        Assert.Single(_floor.Record.Holds.Vehicles(new HoldQuery([], From: SampleRun.Wall)));
        Assert.Empty(_floor.Record.Holds.Vehicles(new HoldQuery([], From: SampleRun.Wall.AddTicks(1))));
        Assert.Empty(_floor.Record.Holds.Vehicles(new HoldQuery([], Until: SampleRun.Wall)));
        Assert.Single(_floor.Record.Holds.Vehicles(new HoldQuery([], Until: SampleRun.Wall.AddTicks(1))));
    }

    [Theory]
    [InlineData("drive", "adw", true)]
    [InlineData("drive", "fwd", false)]
    [InlineData("tow", "no", true)]
    [InlineData("lots", "b", true)]
    [InlineData("lots", "[a, b]", false)]
    [InlineData("nothing", "b", false)]
    public void Options_and_lists_are_asked_as_facts_are(string fact, string value, bool matches)
    {
        Build(SampleRun.Vin, "L-7", [new("lots", new ListValue(["a", "b"]))]);

        Assert.Equal(matches, _floor.Record.Holds.Vehicles(new HoldQuery([], Fact: fact, Value: value)).Length == 1);
    }

    [Fact]
    public void All_that_is_asked_must_be_true()
    {
        Build(SampleRun.Vin, "L-7");
        var query = new HoldQuery([], Fact: "battery_lot", Value: "L-7", Station: "startup_1", Instrument: "M-0417", Program: "0.1.0");

        Assert.Single(_floor.Record.Holds.Vehicles(query));
        Assert.Empty(_floor.Record.Holds.Vehicles(query with { Station = "startup_2" }));
        Assert.Empty(_floor.Record.Holds.Vehicles(query with { Instrument = "M-0418" }));
        Assert.Empty(_floor.Record.Holds.Vehicles(query with { Program = "0.2.0" }));
        Assert.Empty(_floor.Record.Holds.Vehicles(query with { Vins = [Other] }));
    }

    [Fact]
    public void A_vehicle_named_is_held_before_it_was_ever_run()
    {
        Crew.Done(Office.Place(_floor.Crew["quinn"], new HoldQuery([Other]), "wait for the lawyers"));

        Assert.Contains("hold hold-0001: wait for the lawyers", Against(Other));
    }

    [Fact]
    public void A_lifted_hold_holds_nobody_and_is_lifted_once()
    {
        Build(SampleRun.Vin, "L-7");
        var hold = Crew.Done(Office.Place(_floor.Crew["quinn"], new HoldQuery([SampleRun.Vin]), "cells swell"));
        _floor.Crew.Refused(Refusal.NotAllowed, () => Office.Lift(_floor.Crew["rita"], hold.Id, "in a hurry"));
        _floor.Crew.Refused(Refusal.Unknown, () => Office.Lift(_floor.Crew["quinn"], "hold-0009", "cells measured"));

        Assert.Equal("cells measured", Crew.Done(Office.Lift(_floor.Crew["quade"], hold.Id, "cells measured")).Lifted);
        Assert.Empty(Against(SampleRun.Vin));
        Assert.Empty(_floor.Record.Holds.List());
        Assert.Single(_floor.Record.Holds.List(all: true));
        _floor.Crew.Refused(Refusal.AgainstRule, () => Office.Lift(_floor.Crew["quinn"], hold.Id, "again"));
    }

    [Fact]
    public void Rehearsals_are_never_held()
    {
        Story.Run(_floor.Station, [("lamp", Pass)], mode: Model.Events.RunMode.Rehearsal);

        Assert.Empty(_floor.Record.Holds.Vehicles(new HoldQuery([], Station: "startup_1")));
    }

    [Fact]
    public void What_is_malformed_or_not_allowed_is_refused()
    {
        var (crew, named) = (_floor.Crew, new HoldQuery([SampleRun.Vin]));
        crew.Refused(Refusal.NotAllowed, () => Office.Place(crew["edda"], named, "cells swell"));
        crew.Refused(Refusal.Malformed, () => Office.Place(crew["quinn"], named, ""));
        Assert.Contains("every vehicle", crew.Refused(Refusal.Malformed, () => Office.Place(crew["quinn"], new HoldQuery([]), "cells swell")));
        crew.Refused(Refusal.Malformed, () => Office.Place(crew["quinn"], new HoldQuery(["x"]), "cells swell"));
        crew.Refused(Refusal.Malformed, () => Office.Place(crew["quinn"], new HoldQuery([.. Enumerable.Repeat(SampleRun.Vin, 501)]), "cells swell"));
        crew.Refused(Refusal.Malformed, () => Office.Place(crew["quinn"], new HoldQuery([], Fact: "battery_lot"), "cells swell"));
        crew.Refused(Refusal.Malformed, () => Office.Place(crew["quinn"], new HoldQuery([], Fact: "battery_lot", Value: "a\u0007"), "cells swell"));
        crew.Refused(Refusal.Malformed, () => Office.Place(crew["quinn"], new HoldQuery([], From: SampleRun.Wall, Until: SampleRun.Wall), "cells swell"));
    }

    public void Dispose() => _floor.Dispose();

    private ImmutableArray<string> Against(string vin) => [.. _floor.Record.Releases.Of(vin, Floor.Route).Against.Where(line => line.StartsWith("hold", StringComparison.Ordinal))];

    private void Build(string vin, string lot, params KeyValuePair<string, Value>[] facts) => Story.Run(
        _floor.Station, [("lamp", Pass)], vin: vin, with: begun => begun with { Order = begun.Order with { Facts = begun.Order.Facts.Add("battery_lot", new TextValue(lot)).AddRange(facts) } });
}
