using System.Collections.Immutable;
using CsCheck;
using EolSequencer.Model.Events;
using EolSequencer.Model.Judging;
using EolSequencer.Model.Ports;
using EolSequencer.Model.Sequences;
using EolSequencer.Model.Texts;
using EolSequencer.Model.Units;
using EolSequencer.Model.Values;
using EolSequencer.Model.Vehicles;
using EolSequencer.Records.Writing;

namespace EolSequencer.Records.Tests.Samples;

/// <summary>Generates events of every kind, plain ones and odd ones.</summary>
internal static class AnyEvent
{
    private static readonly Gen<string> Word = Gen.OneOf(
        Gen.Const("lamps[front_left].current"),
        Gen.String[Gen.Char['a', 'z'], 1, 12],
        Gen.String[Among('"', '\\', '\n', '\t', '\0', 'Ω', 'é', '°', '–', '\u2028', '<', '&', ' ', 'x'), 0, 9],
        Gen.Const("\U0001F697 front"));

    private static readonly Gen<long> Time = Gen.OneOf(Gen.Long[0, 400_000_000], Gen.Long[0, 1L << 50]);
    private static readonly Gen<int> Attempt = Gen.Frequency((3, Gen.Const(1)), (1, Gen.Int[1, 9]));
    private static readonly Gen<Verdict> AnyVerdict = Gen.Enum<Verdict>();
    private static readonly Gen<decimal> Number = Gen.Select(Gen.Long, Gen.Int[0, 8], (digits, scale) => new decimal((int)digits, (int)(digits >> 32), 0, digits < 0, (byte)scale));
    private static readonly Gen<string> NumberWord = Number.Select(NumberText.Of);
    private static readonly Gen<string?> Symbol = Maybe(Among("A", "N·m", "°C", "%"));
    private static readonly Gen<string?> Raw = Maybe(Gen.Byte.Array[0, 8].Select(Convert.ToHexString));

    private static readonly Gen<CriterionResult> Criterion =
        from of in Gen.Frequency((3, Gen.Const("")), (1, Word))
        from value in Maybe(Gen.OneOf(NumberWord, Word))
        from unit in Symbol
        from low in Maybe(NumberWord)
        from high in Maybe(NumberWord)
        from expected in Gen.OneOf(Gen.Const(DescriptionOf(low, high, unit)), Maybe(Word))
        from uncertainty in Maybe(NumberWord)
        from verdict in AnyVerdict
        from recordOnly in Gen.Bool
        from guarded in Gen.Bool
        from text in Gen.Bool
        select new CriterionResult(of, value, unit, expected, low, high, uncertainty, verdict, recordOnly) 
        {
            IsGuarded = guarded && uncertainty is not null,
            IsText = text && value is not null,
        };

    private static readonly Gen<ReadingUsed> Reading = Gen.Select(Word, Raw, Time, Maybe(Word), (channel, raw, at, instrument) => new ReadingUsed(channel, raw, at, instrument));

    private static readonly Gen<RunEvent> AnyJudged =
        from n in Gen.Int[1, 1000]
        from start in Time
        from took in Time
        from lag in Gen.Frequency((2, Gen.Const(0L)), (1, Gen.Long[0, 5000]))
        from step in Word
        from attempt in Attempt
        from measured in AnyVerdict
        from counted in Gen.Frequency((3, Gen.Const(measured)), (1, AnyVerdict))
        from cause in Gen.Frequency((2, Gen.Const((MissingCause?)null)), (1, Gen.Enum<MissingCause>().Select(some => (MissingCause?)some)))
        from detail in Maybe(Word)
        from criteria in List(Criterion, 3)
        from readings in List(Reading, 3)
        from requirements in List(Word, 2)
        from repair in Among(null, LocalText.Plain("lamp"), new LocalText([new LocalText.Version("en", "lamp"), new LocalText.Version("es", "lámpara")]))
        select (RunEvent)new Judged
        {
            N = n, At = start + took + lag, Step = step, Attempt = attempt, Start = start, Took = took,
            Measured = measured, Counted = counted, Cause = cause, Detail = detail, Criteria = criteria, Readings = readings, Nonconformity = detail, Picture = detail is null ? null : "p.svg", Part = detail is null ? null : "lock[fl]", Requirements = requirements, Repair = repair,
        };

    private static readonly Gen<Value> AnyValue = Gen.OneOf<Value>(
        Word.Select(text => (Value)new TextValue(text)),
        Gen.Bool.Select(truth => (Value)TruthValue.Of(truth)),
        List(Word, 3).Select(items => (Value)new ListValue(items)),
        Gen.Select(Number, Among<Unit?>(null, UnitTable.Required("V"), UnitTable.Required("km/h")), Gen.Bool, (number, unit, inexact) => (Value)new NumberValue(number, unit, inexact)));

    private static readonly Gen<ImmutableSortedDictionary<string, Value>> Values =
        Gen.Dictionary(Word, AnyValue)[0, 4].Select(values => values.ToImmutableSortedDictionary(StringComparer.Ordinal));

    private static readonly Gen<Order> AnyOrder = Gen.Select(Word, Word, Values, Values, (id, type, options, facts) =>
        new Order(id, Vin.TryParse(SampleRun.Vin, CheckDigitRule.Off).Vin!, type, options, facts));

    private static readonly Gen<SourceCopy> Source = Gen.Select(Word, Word, (path, text) => SampleRun.Source(path, text));

    private static readonly Gen<InstrumentInUse> Instrument = Gen.Select(Word, Word, Gen.Int[0, 60000], Gen.Bool, (role, id, day, stated) =>
        new InstrumentInUse(role, id, stated ? DateOnly.FromDayNumber(700_000 + day) : null));

    private static readonly Gen<RunEvent> AnyRunBegun =
        from words in Word.Array[8]
        from revision in Gen.Int[1, 99]
        from order in AnyOrder
        from sources in List(Source, 3)
        from person in Maybe(Word)
        from mode in Gen.Enum<RunMode>()
        from seed in Gen.OneOf(Gen.Const((ulong?)null), Gen.ULong.Select(some => (ulong?)some))
        from injected in List(Word, 2)
        from ticks in Gen.Long[0, 3_000_000_000_000_000_000]
        from instruments in List(Instrument, 2)
        from only in List(Word, 2)
        from notApplicable in List(Word, 4)
        from planned in Gen.Int[0, 500]
        select (RunEvent)new RunBegun
        {
            N = 1, At = 0, Run = words[0], Plant = words[1], Station = words[2], StationKind = words[3], Sequence = words[4], Revision = revision,
            Order = order, Sources = sources, Compiled = words[5], Program = words[6], Person = person, Mode = mode, Seed = seed, Injected = injected,
            Zone = words[7], Wall = new DateTimeOffset(ticks, TimeSpan.Zero), Instruments = instruments, OnlySteps = only, RetestOf = only.IsEmpty ? null : words[3], NotApplicable = notApplicable, Planned = planned,
        };

    private static readonly Gen<RunEvent> AnySeries =
        from n in Gen.Int[2, 1000]
        from at in Time
        from step in Word
        from channel in Word
        from points in List(Gen.Select(Time, Maybe(Word), Raw, (when, value, raw) => new SeriesPoint(when, value, raw)), 40)
        from capture in Gen.Select(Time, Time, Maybe(Word), Gen.Bool, (begun, length, lost, isCapture) => isCapture ? new CaptureSpan(begun, length, lost) : null)
        select (RunEvent)new SeriesRecorded { N = n, At = at, Step = step, Channel = channel, Points = points, Capture = capture };

    private static readonly Gen<RunEvent> AnyConditions =
        from n in Gen.Int[2, 1000]
        from at in Time
        from conditions in List(
            from name in Word
            from value in Maybe(Gen.OneOf(NumberWord, Word))
            from unit in Symbol
            from missing in Gen.Enum<MissingCause>()
            from instrument in Maybe(Word)
            select new Condition(name, value, value is null ? null : unit, value is null ? missing : null, instrument), 4)
        select (RunEvent)new ConditionsRead { N = n, At = at, Conditions = conditions };

    private static readonly Gen<RunEvent> Short =
        from n in Gen.Int[2, 1000]
        from at in Time
        from a in Word
        from b in Word
        from who in Maybe(Word)
        from number in Gen.Int[1, 300]
        from kind in Gen.Enum<PromptKind>()
        from which in Gen.Int[0, 11]
        select Of(which, n, at, a, b, who, number, kind);

    private static readonly Gen<RunEvent> AnyRunEnded =
        from n in Gen.Int[2, 1000]
        from at in Time
        from numbers in Gen.Int[0, 300].Array[5]
        from interrupted in Gen.Bool
        from notReached in List(Word, 4)
        select (RunEvent)new RunEnded
        {
            N = n, At = at, RollUp = new RollUp(numbers[0], numbers[1], numbers[2], numbers[3], numbers[4]), Interrupted = interrupted, NotCounted = [.. notReached.Take(1)], NotReached = notReached,
        };

    /// <summary>Of any kind, about as often each.</summary>
    public static Gen<RunEvent> Any { get; } = Gen.Frequency((4, AnyJudged), (8, Short), (1, AnyRunBegun), (1, AnyRunEnded), (1, AnySeries), (1, AnyConditions));

    private static RunEvent Of(int which, int n, long at, string a, string b, string? who, int number, PromptKind kind) => which switch
    {
        0 => new Asked { N = n, At = at, Step = a, Attempt = number, Prompt = number, Kind = kind },
        1 => new Answered { N = n, At = at, Step = a, Prompt = number, Answer = b, Detail = who, Person = null },
        2 => new Answered { N = n, At = at, Step = a, Prompt = number, Answer = b, Detail = null, Person = who },
        3 => new Begun { N = n, At = at, Step = a, Attempt = number },
        4 => new NotNeeded { N = n, At = at, Step = a },
        5 => new PassedOver { N = n, At = at, Step = a, Reason = b, Person = who },
        6 => new DeviceLost { N = n, At = at, Role = a, Cause = b },
        8 => new AnswerRefused { N = n, At = at, Step = a, Prompt = number, Answer = b, Reason = a },
        7 => new DeviceBack { N = n, At = at, Role = a },
        10 => new ClockSet { N = n, At = at, Before = DateTimeOffset.UnixEpoch.AddTicks(at), After = DateTimeOffset.UnixEpoch.AddTicks(at + number) },
        9 => new Resumed { N = n, At = at, For = (ResumedFor)(number % 3), Wall = DateTimeOffset.UnixEpoch.AddTicks(at), Person = who },
        _ => new Stopped { N = n, At = at, Step = who, Reason = a, Person = who },
    };

    private static string? DescriptionOf(string? low, string? high, string? unit) =>
        low is null && high is null ? null
        : low is null ? $"at most {high}{(unit is null ? "" : $" {unit}")}"
        : high is null ? $"at least {low}{(unit is null ? "" : $" {unit}")}"
        : $"{low} .. {high}{(unit is null ? "" : $" {unit}")}";

    private static Gen<T> Among<T>(params T[] items) => Gen.Int[0, items.Length - 1].Select(k => items[k]);

    private static Gen<string?> Maybe(Gen<string> some) => Gen.OneOf(Gen.Const((string?)null), some.Select(text => (string?)text));

    private static Gen<ImmutableArray<T>> List<T>(Gen<T> item, int most) => item.Array[0, most].Select(items => items.ToImmutableArray());
}
