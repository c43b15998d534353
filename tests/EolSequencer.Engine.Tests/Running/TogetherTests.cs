using EolSequencer.Engine.Tests.Kit;
using EolSequencer.Model.Events;
using EolSequencer.Model.Judging;
using EolSequencer.Model.Ports;
using EolSequencer.Model.Sequences;
using EolSequencer.Model.Values;
using static EolSequencer.Engine.Tests.Kit.Channels;

namespace EolSequencer.Engine.Tests.Running;

/// <summary>Branches share one operator, exclusive devices and one clock, and the same run happens the same way again.</summary>
public class TogetherTests
{
    private readonly Bench _bench = new();

    [Fact]
    public void Branches_run_side_by_side()
    {
        _bench.Run(Steps.Together([Steps.Wait("a", 5)], [Steps.Wait("b", 3), Steps.Wait("c", 1)]));
        Assert.Equal(["b", "c", "a"], _bench.Judged.Select(j => j.Step));
        Assert.Equal(5_000_000, _bench.Journal.Events.Last().At);
    }

    [Fact]
    public void One_prompt_is_shown_at_a_time_in_the_order_of_asking()
    {
        _bench.Operator.Answers("a", new Answer.Ok(), 4).Answers("b", new Answer.Ok(), 4);
        _bench.Run(Steps.Together([Steps.Judge("a")], [Steps.Judge("b")]));
        Assert.Equal(1, _bench.Operator.MostAtOnce);
        Assert.Equal([("a", 0L, 4_000_000L), ("b", 4_000_000L, 4_000_000L)], _bench.Judged.Select(j => (j.Step, j.Start, j.Took)));
    }

    [Fact]
    public void An_exclusive_device_serves_one_branch_at_a_time()
    {
        _bench.Meter.With("current", _ => Ampere(2m)).Delay = TimeSpan.FromSeconds(1);
        _bench.Run(Steps.Together([Steps.Read("a", Current)], [Steps.Read("b", Current)]));
        Assert.Equal(1, _bench.Meter.MostAtOnce);
        Assert.Equal([0L, 1_000_000L], _bench.Judged.Select(j => j.Start));
    }

    [Fact]
    public void A_stop_in_one_branch_ends_the_others_at_their_next_wait()
    {
        _bench.Bus.With("voltage", _ => Volt(1m));
        var bad = Steps.Read("bad", Voltage, Steps.Volts(12m, 13m)) with { OnFail = OnFail.Stop };
        _bench.Run(Steps.Together([Steps.Wait("a", 60), Steps.Wait("never", 1)], [Steps.Wait("b", 1), bad]), Steps.Wait("rest", 1));
        Assert.Equal(["never", "rest"], _bench.Journal.Events.OfType<RunEnded>().Single().NotReached);
        Assert.Equal(Verdict.Inconclusive, _bench.Judged.Single(j => j.Step == "a").Counted);
    }

    [Fact]
    public void An_any_order_group_shows_all_its_prompts_and_ends_them_in_whatever_order()
    {
        _bench.Bus.With("pedal", at => TruthValue.Of(at > TimeSpan.FromSeconds(3))).With("gate", at => TruthValue.Of(at > TimeSpan.FromSeconds(1)));
        var group = Steps.Group("doors", Steps.AskUntil("front", True(Pedal)), Steps.AskUntil("rear", True(Gate))) with { AnyOrder = true };
        Assert.Equal(Verdict.Pass, _bench.Run(group));
        Assert.Equal(["doors.rear", "doors.front"], _bench.Judged.Select(j => j.Step));
        Assert.Equal((2, "doors"), (_bench.Operator.MostAtOnce, _bench.Operator.Prompts[0].Screen));
    }

    [Fact]
    public void The_same_run_gives_the_same_events()
    {
        static List<RunEvent> Once()
        {
            var bench = new Bench();
            bench.Bus.With("voltage", at => Volt((decimal)at.TotalSeconds)).With("pedal", at => TruthValue.Of(at > TimeSpan.FromSeconds(3)));
            bench.Meter.With("current", _ => Ampere(2m));
            bench.Operator.Answers("a", new Answer.Ok(), 4).Answers("c", new Answer.NotOk(null), 0.5);
            bench.Run(Steps.Together(
                [Steps.Judge("a"), Steps.Read("v", Voltage, Steps.Volts(1m, 9m))],
                [Steps.Read("i", Current), Steps.Judge("c"), Steps.AskUntil("p", True(Pedal))]));
            return bench.Journal.Events;
        }

        Assert.Equal(Once().Select(e => System.Text.Json.JsonSerializer.Serialize(e, e.GetType(), Plain)), Once().Select(e => System.Text.Json.JsonSerializer.Serialize(e, e.GetType(), Plain)));
    }

    private static readonly System.Text.Json.JsonSerializerOptions Plain = new() { ReferenceHandler = System.Text.Json.Serialization.ReferenceHandler.IgnoreCycles };
}
