using EolSequencer.Language.Expressions;
using EolSequencer.Language.Loading;
using EolSequencer.Model.Judging;
using EolSequencer.Model.Sequences;
using EolSequencer.Model.Values;
using Snapshooter.Xunit3;

namespace EolSequencer.Language.Tests.Binding;

/// <summary>What binding makes of a right document: defaults, units and names as an engine finds them.</summary>
public sealed class CheckedSequenceTests : IClassFixture<CheckedSequenceTests.Loaded>
{
    private readonly CheckedSequence _startUp;
    private readonly CheckedSequence _roller;

    public CheckedSequenceTests(Loaded loaded) => (_startUp, _roller) = (loaded.StartUp, loaded.Roller);

    /// <summary>Both sequences of the good plant, loaded once.</summary>
    public sealed class Loaded : IDisposable
    {
        private readonly TestPlant _plant = new();

        public Loaded()
        {
            StartUp = SequenceLoader.Load(_plant.PathOf("sequences/startup.yaml"), ExpressionCache.None).Sequence!;
            Roller = SequenceLoader.Load(_plant.PathOf("sequences/roller.yaml"), ExpressionCache.None).Sequence!;
        }

        public CheckedSequence StartUp { get; }

        public CheckedSequence Roller { get; }

        public void Dispose() => _plant.Dispose();
    }

    [Fact]
    public void A_roller_test_is_bound_as_the_snapshot_says() => Snapshot.Match(SequenceText.Of(_roller));

    [Fact]
    public void Defaults_reach_a_step_unless_it_says_otherwise()
    {
        Assert.Equal(Seconds(5), Find("vin").Within);
        Assert.Equal(Seconds(30), Find("label").Within);
        Assert.Equal((StepClass.Safety, OnFail.Stop), (Find("label").Class, Find("label").OnFail));
        Assert.Equal((StepClass.Function, OnFail.Continue), (Find("vin").Class, Find("vin").OnFail));
        Assert.Equal(Seconds(0.1m), Find("start").Every);
    }

    [Fact]
    public void A_sample_with_a_stated_length_takes_no_limit_from_the_defaults() =>
        Assert.Null(Flat(_startUp.Steps).Single(step => step.Id == "idle").Within);

    [Fact]
    public void A_guarded_decision_keeps_its_uncertainty_in_the_channels_unit()
    {
        Assert.Equal((Decision.Guarded, "0.05 V"), (Find("rest").Decision, Find("rest").Uncertainty!.ToString()));
        Assert.Equal(Decision.Simple, Find("ripple").Decision);
    }

    [Fact]
    public void Record_only_covers_the_step_or_one_criterion()
    {
        Assert.True(Find("copy").RecordOnly);
        Assert.Equal((false, true), (Find("ripple").RecordOnly, Find("ripple").ExpectIsRecordOnly));
        var pedal = Flat(_startUp.Steps).Single(step => step.Id == "pedal");
        Assert.Equal((true, false), (pedal.TakesIsRecordOnly, pedal.RecordOnly));
    }

    [Fact]
    public void What_a_person_enters_has_the_unit_of_what_is_expected() =>
        Assert.Equal("number in µm", Assert.IsType<StepAction.Enter>(Find("paint").Action).Shape.ToString());

    [Fact]
    public void A_value_is_handed_to_a_device_in_the_unit_of_its_action()
    {
        var set = Assert.IsType<StepAction.SetTo>(Flat(_startUp.Steps).Single(step => step.Id == "set_level").Action);
        var measure = Assert.IsType<StepAction.Do>(Flat(_startUp.Steps).Single(step => step.Id == "measure").Action);

        Assert.Equal("12.5 V", set.To.ToString());
        Assert.Equal(["time=0.500 s", "range=low"], measure.With.Select(argument => $"{argument.Name}={argument.Value}"));
    }

    private Step Find(string id) => _startUp.Steps.OfType<Step>().Single(step => step.Id == id);

    private static Operand Seconds(decimal seconds) => new Operand.Constant(new NumberValue(seconds, Model.Units.UnitTable.Second));

    private static IEnumerable<Step> Flat(IEnumerable<Node> nodes) => nodes.SelectMany(node => node switch
    {
        Step step => [step],
        Group group => Flat(group.Children),
        Together together => together.Branches.SelectMany(branch => Flat(branch.Children)),
        _ => [],
    });
}
