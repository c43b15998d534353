using CsCheck;
using EolSequencer.Model.Events;
using EolSequencer.Model.Judging;
using EolSequencer.Records.Holds;
using EolSequencer.Records.Tests.Samples;
using static EolSequencer.Model.Judging.Verdict;

namespace EolSequencer.Records.Tests.Release;

/// <summary>Whatever happens to a vehicle in whatever order: it never leaves with an open nonconformity.</summary>
public sealed class ReleaseStoryTests
{
    private static readonly string[] Steps = ["horn", "lamp", "wiper"];

    [Fact]
    public void No_story_releases_a_vehicle_with_something_open() => Gen.Select(Gen.Int[0, 9], Gen.Int[0, 26], Gen.Int[0, 3]).Array[1, 25].Sample(
        story =>
        {
            using var floor = new Floor();
            var model = new Model();
            foreach (var (what, verdicts, which) in story)
            {
                Tell(floor, model, what, verdicts, which);
                Check(floor, model, $"after {what} {verdicts} {which}");
            }

            floor.Crew.AssertWhole();
        },
        iter: 20,
        threads: 1);

    /// <summary>What must be true, kept as simply as can be: which steps are bad, and what else is open.</summary>
    private sealed class Model
    {
        public string? Whole { get; set; }

        /// <summary>Steps that failed last, or passed last after a repair that no concession followed, or were conceded (false: harmless).</summary>
        public Dictionary<string, bool> Bad { get; } = [];

        public int Scratches { get; set; }

        public bool Held { get; set; }
    }

    private static void Tell(Floor floor, Model model, int what, int verdicts, int which)
    {
        var found = Steps.Select((step, at) => (Step: step, Counted: (verdicts / (int)Math.Pow(3, at) % 3) switch { 0 => Fail, _ => Pass })).ToArray();
        var open = floor.Record.Nonconformities.List();
        switch (what)
        {
            case 0 or 1:
                model.Whole = floor.Run(found);
                Note(model, found, floor);
                break;
            case 2 or 3 or 4 when model.Whole is { } whole:
                var repeated = found[..(1 + which % 3)];
                floor.Retest(whole, repeated);
                Note(model, repeated, floor);
                break;
            case 5:
                Story.Run(floor.Station, found, mode: RunMode.Rehearsal);
                break;
            case 6 when open.Length > 0:
                var fixedOne = open[which % open.Length];
                if (which % 2 == 0) Crew.Done(floor.Office.Rework(floor.Crew["rita"], fixedOne.Id, "done", []));
                else Crew.Done(floor.Office.Repair(floor.Crew["rita"], fixedOne.Id, "done", []));
                break;
            case 7 when open.Length > 0:
                var conceded = open[which % open.Length];
                Crew.Done(floor.Office.Concede(floor.Crew["edda"], floor.Crew["quinn"], conceded.Id, "good enough"));
                if (conceded.Step is { } step) model.Bad[step] = false;
                else model.Scratches--;
                break;
            case 8:
                if (which == 0 && !model.Held)
                {
                    Crew.Done(floor.Crew.Office.Holds.Place(floor.Crew["quinn"], new HoldQuery([SampleRun.Vin]), "wait"));
                    model.Held = true;
                }
                else if (model.Held)
                {
                    Crew.Done(floor.Crew.Office.Holds.Lift(floor.Crew["quinn"], floor.Record.Holds.List()[0].Id, "go"));
                    model.Held = false;
                }

                break;
            case 9 when which == 0:
                Crew.Done(floor.Office.Open(floor.Crew["opal"], SampleRun.Vin, "scratch", null, "seen"));
                model.Scratches++;
                break;
        }
    }

    private static void Note(Model model, (string Step, Verdict Counted)[] found, Floor floor)
    {
        var open = floor.Record.Nonconformities.List();
        foreach (var (step, counted) in found)
        {
            if (counted == Fail) model.Bad[step] = true;
            else if (!open.Any(one => one.Step == step)) model.Bad.Remove(step);
        }
    }

    private static void Check(Floor floor, Model model, string when)
    {
        var open = floor.Record.Nonconformities.List();
        var mayLeave = model is { Whole: not null, Held: false, Scratches: 0 } && !model.Bad.ContainsValue(true) && floor.Record.Vehicles.Of(SampleRun.Vin).HasPassed;
        var before = floor.Ready;
        Assert.True(mayLeave == before.IsReady, $"{when}: may leave {mayLeave}; against it: {string.Join("; ", before.Against)}");
        var released = floor.Release();
        if (released.IsDone) Assert.True(open.IsEmpty && !model.Held && !model.Bad.ContainsValue(true), $"{when}: released with {string.Join(", ", open.Select(one => one.Id))}");
        if (before is { IsReady: true, State: null or "returned" }) Assert.True(released.IsDone, $"{when}: {released.Refused?.Why}");
    }
}
