using EolSequencer.Language.ExpectedResults;
using EolSequencer.Language.Expressions;
using EolSequencer.Language.Loading;
using EolSequencer.Language.Tests.Binding;
using EolSequencer.Model.ExpectedResults;
using EolSequencer.Model.Judging;
using EolSequencer.Model.Sequences;
using EolSequencer.Model.Values;

namespace EolSequencer.Language.Tests.ExpectedResults;

/// <summary>What a test means is decided when it is loaded; whoever rehearses it looks nothing up.</summary>
public sealed class ExpectedLoaderTests : IDisposable
{
    private readonly TestPlant _plant = new();

    public void Dispose() => _plant.Dispose();

    [Fact]
    public void A_test_has_what_it_says_and_else_what_its_file_says()
    {
        var (good, many) = Good();

        Assert.Equal(("good", 3ul, "T-1", "startup", "startup_1"), (good.Name, good.Seed, good.Order.Id, good.Sequence.Id, good.Station.Id));
        Assert.Equal((Verdict.Pass, OtherSteps.Pass), (good.Verdict.Value, good.Others.Value));
        Assert.Equal((7ul, Verdict.Error, OtherSteps.PassOrNotReached), (many.Seed, many.Verdict.Value, many.Others.Value));
        Assert.Equal("lamp_open=fog", Assert.Single(many.Faults).Value);
        Assert.Equal(["rest", "lamps", "units[gateway]", "vin"], many.Only);
        Assert.Same(good.Sequence, many.Sequence);
    }

    [Fact]
    public void A_step_has_all_that_is_expected_of_it_each_with_its_place()
    {
        var rest = Good().Many.Steps[0];

        Assert.Equal(("rest", StepState.Fail, 1), (rest.Path, rest.State!.Value, rest.Attempts!.Value));
        var window = Assert.IsType<Expectation.Within>(rest.Value!.Is);
        Assert.Equal(("11.8 V", "12.0 V"), (window.Low!.ToString(), window.High!.ToString()));
        Assert.Equal((ValueKind.Number, 16, 34), (rest.Value.Kind, rest.Value.Place.Line, rest.Value.Place.Column));
        Assert.Equal("2 s", Assert.IsType<Expectation.Within>(rest.Took!.Value).High!.ToString());
        Assert.Equal("60 s", Assert.IsType<Expectation.Within>(rest.Started!.Value).High!.ToString());
        Assert.Equal(MissingCause.Silent, Good().Many.Steps.Single(step => step.Path == "vin").Cause!.Value);
    }

    [Fact]
    public void A_path_without_loop_values_stands_for_those_that_have_no_key_of_their_own()
    {
        var steps = Good().Many.Steps.ToDictionary(step => step.Path);

        Assert.Equal(["lamps[fog].lit"], steps["lamps[fog].lit"].Ids);
        Assert.Equal(["lamps[plate].lit"], steps["lamps.lit"].Ids);
    }

    [Fact]
    public void A_fault_that_nobody_knows_and_a_station_with_real_devices_are_found_at_load()
    {
        _plant.Put("stations/bench.yaml", "station: bench\nstation-kind: startup\ndata: ../../eol-data\ndevices: { bus: { adapter: doip }, meter: { adapter: scpi } }\n");
        var path = _plant.Put("odd.yaml", "expected-results: odd\nstation: bench\norder: T-1\ntests: { t: { verdict: pass, faults: [gremlin] } }\n");

        var load = Load(path);

        Assert.Empty(load.Files);
        Assert.Equal(["RES011 2:10", "RES010 4:39"], load.Diagnostics.Select(one => $"{one.Code} {one.Place.Line}:{one.Place.Column}"));
        Assert.Equal(["RES011", "RES010"], PlantChecker.Check([path], ExpressionCache.None, new SmallRehearsals()).Diagnostics.Select(one => one.Code.Id));
        Assert.Empty(PlantChecker.Check([path], ExpressionCache.None).Diagnostics); // where nobody is asked, nothing is said
    }

    [Fact]
    public void A_fault_in_one_test_hides_none_in_another()
    {
        var one = _plant.Put("one.yaml", "expected-results: one\nstation: startup_1\norder: T-1\ntests: { t: { verdict: passed } }\n");
        var two = _plant.Put("two.yaml", "expected-results: two\nstation: startup_1\norder: T-1\ntests: { t: { verdict: pass, steps: { rset: pass } } }\n");

        Assert.Equal(["SYN018", "RES001"], Load(one, two).Diagnostics.Select(finding => finding.Code.Id));
    }

    [Fact]
    public void A_folder_means_the_files_in_it_and_a_file_is_loaded_once()
    {
        Assert.Equal("startup", Assert.Single(Load(_plant.Root, _plant.PathOf("expected"), _plant.PathOf("expected/startup.expect.yaml")).Files).Id);
        Assert.Empty(Load(_plant.PathOf("orders")).Files);
        Assert.Equal("PLT004", Assert.Single(Load(_plant.PathOf("sequences/startup.yaml")).Diagnostics).Code.Id);
        Assert.Equal("FIL001", Assert.Single(Load(_plant.PathOf("nowhere.yaml")).Diagnostics).Code.Id);
    }

    [Fact]
    public void Without_a_sequence_the_one_in_force_is_tested()
    {
        var path = _plant.Put("odd.yaml", "expected-results: odd\nstation: startup_1\norder: T-1\ntests: { t: { verdict: pass } }\n");
        Assert.Equal("startup", Assert.Single(Assert.Single(Load(path).Files).Runs).Sequence.Id);

        _plant.Put("sequences/second.yaml", File.ReadAllText(_plant.PathOf("sequences/startup.yaml")).Replace("sequence: startup", "sequence: second", StringComparison.Ordinal));
        Assert.Equal("STA008", Assert.Single(Load(path).Diagnostics).Code.Id);
    }

    /// <summary>What is not sure is left to the rehearsal.</summary>
    [Theory]
    [InlineData("verdict: fail, others: any")]
    [InlineData("verdict: inconclusive, others: not-reached")]
    [InlineData("verdict: inconclusive, steps: { ripple: not-reached }")]
    [InlineData("verdict: fail, steps: { rest: { attempts: 1 } }")]
    [InlineData("verdict: error, steps: { rest: error, ripple: fail }")]
    [InlineData("verdict: pass, steps: { tell: error }")]
    public void What_a_run_can_meet_is_no_contradiction(string test) =>
        Assert.Empty(Load(_plant.Put("odd.yaml", $"expected-results: odd\nstation: startup_1\norder: T-1\ntests: {{ t: {{ {test} }} }}\n")).Diagnostics);

    [Fact]
    public void A_fault_of_the_sequence_is_told_and_its_tests_are_not_run()
    {
        _plant.Put("sequences/startup.yaml", File.ReadAllText(_plant.PathOf("sequences/startup.yaml")).Replace("read: meter.range", "read: meter.rnage", StringComparison.Ordinal));

        var load = Load(_plant.Root);

        Assert.Empty(load.Files);
        Assert.All(load.Diagnostics, finding => Assert.EndsWith("startup.yaml", finding.Place.File, StringComparison.Ordinal));
        Assert.NotEmpty(load.Diagnostics);
    }

    private (ExpectedRun One, ExpectedRun Many) Good()
    {
        var load = Load(_plant.Root);
        Assert.Empty(load.Diagnostics);
        var runs = Assert.Single(load.Files).Runs;
        return (runs[0], runs[1]);
    }

    private static ExpectedLoad Load(params string[] paths) => ExpectedLoader.Load(paths, ExpressionCache.None, new SmallRehearsals());
}
