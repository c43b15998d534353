using System.Collections.Immutable;
using System.Globalization;
using System.Security.Cryptography;
using System.Text;
using EolSequencer.Model.Events;
using EolSequencer.Model.Judging;
using EolSequencer.Model.Ports;
using EolSequencer.Model.Sequences;
using EolSequencer.Model.Values;
using EolSequencer.Model.Vehicles;

namespace EolSequencer.Records.Tests.Samples;

/// <summary>A small run with an event of every kind, as an engine would tell it.</summary>
internal static class SampleRun
{
    public const string Vin = "9Z9RR1N42TF000017";

    public static readonly DateTimeOffset Wall = new(2026, 3, 29, 0, 45, 0, TimeSpan.Zero);

    /// <summary>The events of a run.</summary>
    /// <param name="run">Its id, which names the station.</param>
    /// <param name="mode">What it counts for.</param>
    /// <param name="steps">How many judged reads it has beside the rest.</param>
    /// <param name="counted">What the last of them counts for.</param>
    public static ImmutableArray<RunEvent> Of(string run, RunMode mode = RunMode.Production, int steps = 4, Verdict counted = Verdict.Pass, string vin = Vin, string kind = "startup")
    {
        var events = new Builder();
        events.Add((n, at) => Begun(run, mode, vin, kind, steps));
        events.Add((n, at) => new Asked { N = n, At = at, Step = "doors.close", Attempt = 1, Prompt = 1, Kind = PromptKind.Confirm });
        events.Add((n, at) => new AnswerRefused { N = n, At = at, Step = "doors.close", Prompt = 1, Answer = "12 V", Reason = "a number in bar is wanted" });
        events.Add((n, at) => new Answered { N = n, At = at, Step = "doors.close", Prompt = 1, Answer = "confirmed", Person = "p17" });
        events.Add((n, at) => new Begun { N = n, At = at, Step = "lamps.on", Attempt = 1 });
        for (var step = 1; step <= steps; step++)
        {
            var verdict = step == steps ? counted : Verdict.Pass;
            var value = (1.8m + step / 100m).ToString(CultureInfo.InvariantCulture);
            events.Add((n, at) => Read(n, at, $"lamps[l{n}].current", value, verdict));
        }

        events.Add((n, at) => TwoCriteria(n, at));
        events.Add((n, at) => new SeriesRecorded { N = n, At = at, Step = "run_up.speed", Channel = "rollers.speed", Points = [.. Enumerable.Range(0, 40).Select(k => new SeriesPoint(500_000 * k, $"{k}.5", "00FF"))] });
        events.Add((n, at) => new ConditionsRead { N = n, At = at, Conditions = [new Condition("supply", "12.61", "V", null, "M-0417"), new Condition("software[gateway]", null, null, MissingCause.Silent, null)] });
        events.Add((n, at) => new ClockSet { N = n, At = at, Before = Wall.AddSeconds(20), After = Wall.AddSeconds(-3600) });
        events.Add((n, at) => new NotNeeded { N = n, At = at, Step = "tow.current" });
        events.Add((n, at) => new PassedOver { N = n, At = at, Step = "horn.sound", Reason = "night shift", Person = "p3" });
        events.Add((n, at) => new DeviceLost { N = n, At = at, Role = "meter", Cause = "no answer within 500 ms" });
        events.Add((n, at) => new DeviceBack { N = n, At = at, Role = "meter" });
        events.Add((n, at) => new Resumed { N = n, At = at, For = ResumedFor.Steps, Wall = new DateTimeOffset(2026, 3, 2, 6, 30, 0, TimeSpan.Zero), Person = "p17" });
        events.Add((n, at) => new Stopped { N = n, At = at, Step = "doors.close", Reason = "stop asked for", Person = "p17" });
        events.Add((n, at) => new RunEnded { N = n, At = at, RollUp = RollUp.Of([.. Enumerable.Repeat(Verdict.Pass, steps), counted]), Interrupted = false, NotReached = ["water.tight"] });
        return events.ToImmutable();
    }

    /// <summary>A run as versions that read no conditions wrote it.</summary>
    public static IEnumerable<RunEvent> WithoutConditions(string run) => Of(run).Where(next => next is not ConditionsRead).Select((next, at) => next with { N = at + 1 });

    public static SourceCopy Source(string path, string text) => new(path, Convert.ToHexStringLower(SHA256.HashData(Encoding.UTF8.GetBytes(text))), text);

    public static Judged Read(int n, long at, string step, string? value, Verdict verdict, MissingCause? cause = null) => new()
    {
        N = n, At = at, Step = step, Attempt = 1, Start = at - 56_789, Took = 56_789, Measured = verdict, Counted = verdict, Cause = cause,
        Criteria = [new CriterionResult("", value, "A", "1.60 .. 2.40 A", "1.60", "2.40", null, verdict, false)],
        Readings = [new ReadingUsed("meter.lamp_current", "312E383332", at, "M-0417")],
    };

    /// <summary>The serial of a part was found and is on no other vehicle.</summary>
    public static Judged Serial(int n, long at, string part, string serial) => new()
    {
        N = n, At = at, Step = $"label_{part}", Attempt = 1, Start = at, Took = 0, Measured = Verdict.Pass, Counted = Verdict.Pass, Part = part,
        Criteria =
        [
            new CriterionResult("", serial, null, null, null, null, null, Verdict.None, false) { IsText = true },
            new CriterionResult("serial", serial, null, "on no other vehicle", null, null, null, Verdict.Pass, false) { IsText = true },
        ],
    };

    private static Judged TwoCriteria(int n, long at) => new()
    {
        N = n, At = at, Step = "cranking", Attempt = 2, Start = at - 900_000, Took = 900_000, Measured = Verdict.Pass, Counted = Verdict.None, Detail = "second try",
        Criteria =
        [
            new CriterionResult("", "650", "1/min", "at least 600 1/min", "600", null, "5", Verdict.Pass, false),
            new CriterionResult("takes", "0.9", "s", "at most 2.5 s", null, "2.5", null, Verdict.Pass, true),
        ],
    };

    private static RunBegun Begun(string run, RunMode mode, string vin, string kind, int steps) => new()
    {
        N = 1,
        At = 0,
        Run = run,
        Plant = "fennholt",
        Station = run[..run.LastIndexOf('-')],
        StationKind = kind,
        Sequence = "orrin_startup",
        Revision = 3,
        Order = new Order(
            "4711",
            Model.Vehicles.Vin.TryParse(vin, CheckDigitRule.Off).Vin!,
            "orrin",
            ImmutableSortedDictionary<string, Value>.Empty.Add("drive", new TextValue("adw")).Add("tow", TruthValue.No),
            ImmutableSortedDictionary<string, Value>.Empty.Add("software", new TextValue("00482"))),
        Sources = [Source("orrin_startup.yaml", "sequence: orrin_startup\n"), Source("plant.yaml", "plant: fennholt\n")],
        Compiled = "",
        Program = "0.1.0",
        Person = "p17",
        Mode = mode,
        Seed = mode == RunMode.Rehearsal ? 7 : null,
        Zone = "Europe/Oslo",
        Wall = Wall,
        Instruments = [new InstrumentInUse("meter", "M-0417", new DateOnly(2027, 3, 31))],
        NotApplicable = ["sliding_door.left"],
        Planned = steps + 4,
    };

    /// <summary>Numbers events from 1 and puts them a quarter of a second apart.</summary>
    private sealed class Builder
    {
        private readonly ImmutableArray<RunEvent>.Builder _events = ImmutableArray.CreateBuilder<RunEvent>();

        public void Add(Func<int, long, RunEvent> make) => _events.Add(make(_events.Count + 1, 250_000L * _events.Count));

        public ImmutableArray<RunEvent> ToImmutable() => _events.ToImmutable();
    }
}
