using EolSequencer.Engine.Tests.Kit;
using EolSequencer.Model.Events;
using EolSequencer.Model.Expressions;
using EolSequencer.Model.Judging;
using EolSequencer.Model.Sequences;
using EolSequencer.Model.Values;

namespace EolSequencer.Engine.Tests.Running;

/// <summary>Failures are grouped later by what was recorded with the run; recording it must never cost the run anything.</summary>
public class RunConditionTests
{
    private readonly Bench _bench = new();

    [Fact]
    public void They_are_read_once_behind_prepare_each_index_for_itself_and_name_their_instrument()
    {
        _bench.Meter.With("current", _ => Channels.Ampere(1.5m));
        _bench.Bus.With("software[gateway]", _ => new TextValue("G1")).With("software[brakes]", _ => new TextValue("B1"));
        Assert.Equal(Verdict.None, _bench.Run(Sequence(Of("load", Channels.Current), Of("software", new ChannelUse("bus", "software", null)))));

        var read = Assert.Single(_bench.Journal.Events.OfType<ConditionsRead>());
        Assert.Equal(
            [new Condition("load", "1.5", "A", null, "M-0417"), new Condition("software[gateway]", "G1", null, null, null), new Condition("software[brakes]", "B1", null, null, null)],
            read.Conditions);
        Assert.Equal(["ready", "", "a"], _bench.Journal.Events.Where(next => next is Judged or ConditionsRead).Select(next => (next as Judged)?.Step ?? ""));
        Assert.Equal(read.Conditions, RunFold.Of(_bench.Journal.Events).Conditions);
    }

    [Fact]
    public void A_missing_one_is_recorded_with_its_cause_and_fails_nothing()
    {
        _bench.Bus.With("voltage", _ => Channels.Volt(12)).Missing("voltage", MissingCause.Refused);
        Assert.Equal(Verdict.None, _bench.Run(Sequence(Of("supply", Channels.Voltage))));
        Assert.Equal(new Condition("supply", null, null, MissingCause.Refused, null), _bench.Journal.Events.OfType<ConditionsRead>().Single().Conditions.Single());
    }

    [Fact]
    public void A_device_that_never_answers_costs_two_seconds_and_not_the_others()
    {
        _bench.Bus.Delay = TimeSpan.FromMinutes(1);
        _bench.Meter.With("current", _ => Channels.Ampere(1));
        _bench.Run(Sequence(Of("supply", Channels.Voltage), Of("load", Channels.Current), Of("pedal", Channels.Pedal)));

        var read = _bench.Journal.Events.OfType<ConditionsRead>().Single();
        Assert.Equal([("supply", "missing (silent)"), ("load", "1 A"), ("pedal", "missing (silent)")], read.Conditions.Select(one => (one.Name, one.Words)));
        Assert.Equal(2_005_000, read.At - _bench.Judged.First().At);
    }

    [Fact]
    public void A_run_that_broke_off_keeps_those_it_had_and_reads_those_it_had_not()
    {
        _bench.Bus.With("voltage", at => Channels.Volt(at < TimeSpan.FromSeconds(1) ? 12 : 13));
        var sequence = Sequence(Of("supply", Channels.Voltage));
        _bench.Run(sequence);
        var whole = _bench.Journal.Events.ToList();
        var read = whole.FindIndex(next => next is ConditionsRead);

        _bench.GoOn(sequence, whole.Take(read + 1));
        Assert.Single(_bench.Journal.Events, next => next is ConditionsRead);
        _bench.GoOn(sequence, whole.Take(read));
        Assert.Equal("13 V", _bench.Journal.Events.OfType<ConditionsRead>().Single().Conditions.Single().Words);
    }

    private static RunCondition Of(string name, ChannelUse use) => new(name, use, Channels.Of(use));

    private static CheckedSequence Sequence(params RunCondition[] conditions) => Bench.Sequence(Good("a")) with { Prepare = [Good("ready")], Conditions = [.. conditions] };

    private static Node Good(string id) => Steps.Wait(id, 1);
}
