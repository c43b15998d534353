using EolSequencer.Language.Diagnostics;
using EolSequencer.Language.Expressions;
using EolSequencer.Language.Tests.Expressions.Kit;
using EolSequencer.Model.Expressions;
using EolSequencer.Model.Judging;
using EolSequencer.Model.Units;
using EolSequencer.Model.Values;

namespace EolSequencer.Language.Tests.Expressions;

/// <summary>A result is that of the step the author means, and one that may be missing is never taken for granted.</summary>
public class ResultTests
{
    private static readonly ValueShape Force = SmallPlant.Number("N");

    private readonly FixedScope _scope = new();

    [Fact]
    public void A_result_has_a_value_by_unit_a_verdict_and_a_time()
    {
        var names = SmallPlant.With(ResultScope.Start().Add("drag", Force, [], false).Add("seen", null, [], false));
        _scope.Result("drag", new NumberValue(2m, UnitTable.Required("kN")), Verdict.Fail, took: 1.5).Result("seen", null);
        Assert.Equal("2000", Value("results.drag.N", names));
        Assert.Equal("2000 N", Value("results.drag", names));
        Assert.Equal("fail", Value("results.drag.verdict", names));
        Assert.Equal("1.5", Value("results.drag.took.s", names));
        Assert.Equal("1.5 s", Value("results.drag.took", names));
        Assert.Equal("yes", Value("results.seen.verdict == \"pass\" && results.seen.took.ms > 999", names));
        Assert.Equal("240", Value("6 * 60 / results.drag.took.s", names));
        Assert.Equal(ExpressionCodes.NoValue, Author.Fault("results.seen", names: names).Code);
        Assert.Equal(ExpressionCodes.NeverEqual, Author.Fault("results.seen.verdict == \"passed\"", names: names).Code);
    }

    [Fact]
    public void A_read_of_all_indexes_is_picked_by_index()
    {
        var names = SmallPlant.With(ResultScope.Start().Add("force", Force, ["fl", "fr", "rl", "rr"], false));
        _scope.Result("force[fl]", new NumberValue(200m, UnitTable.Required("N"))).Result("force[fr]", new NumberValue(150m, UnitTable.Required("N")))
            .Result("force", null, Verdict.Fail).With("wheel", "fr");
        Assert.Equal("25", Value("imbalance(results.force[\"fl\"].N, results.force[wheel].N)", names));
        Assert.Equal("fail", Value("results.force.verdict", names));
        Assert.Equal(ExpressionCodes.IndexNeeded, Author.Fault("results.force.N", names: names).Code);
        Assert.Equal("did you mean 'fr'?", Author.Fault("results.force[\"frr\"].N", names: names).Hint);
    }

    [Fact]
    public void Inside_a_group_a_sibling_is_named_by_its_id()
    {
        var names = SmallPlant.With(Wheels().Add("torque", SmallPlant.Number("N·m"), [], false));
        var use = Assert.Single(Author.Writes("results.torque.Nm", names: names).Results);
        Assert.Equal((1, "torque"), (use.Levels, Assert.Single(use.Path).Name));
        Assert.Equal("wheel_nuts[fr].torque", use.Resolve(Arguments.None, "wheel_nuts[fr].angle"));
    }

    [Fact]
    public void From_outside_a_result_is_named_from_the_top_with_its_loop_values()
    {
        var names = SmallPlant.With(Wheels().Add("torque", SmallPlant.Number("N·m"), [], false).Leave(false));
        var fixedUse = Assert.Single(Author.Writes("results.wheel_nuts[\"fl\"].torque.Nm", names: names).Results);
        Assert.Equal("wheel_nuts[fl].torque", fixedUse.Resolve(Arguments.None, "other"));
        var named = Assert.Single(Author.Writes("results.wheel_nuts[wheel].torque.Nm", names: names).Results);
        Assert.Equal("wheel_nuts[rl].torque", named.Resolve(Arguments.None.With("wheel", new TextValue("rl")), "other"));

        Assert.Equal("EXP011 write  results.wheel_nuts[\"fl\"]", FaultOf("results.wheel_nuts.torque.Nm", names));
        Assert.Equal("EXP013 did you mean 'fl'?", FaultOf("results.wheel_nuts[\"lf\"].torque.Nm", names));
        Assert.Equal("EXP008 did you mean 'torque'?", FaultOf("results.wheel_nuts[\"fl\"].torqe.Nm", names));
        Assert.Equal("EXP008 there is 'wheel_nuts'", FaultOf("results.torque.Nm", names));
        Assert.Equal("EXP014 there is 'torque'", FaultOf("results.wheel_nuts[\"fl\"]", names));
    }

    [Fact]
    public void Nothing_around_a_fragment_is_seen_inside()
    {
        var inside = ResultScope.Start().Add("before", Force, [], false).Enter("window", [], isFragment: true).Add("down", Force, [], false);
        Author.Writes("results.down.N", names: SmallPlant.With(inside));
        Assert.Equal(ExpressionCodes.UnknownResult, Author.Fault("results.before.N", names: SmallPlant.With(inside)).Code);
        var nested = inside.Enter("again", [], isFragment: false);
        Assert.Equal(1, Assert.Single(Author.Writes("results.down.N", names: SmallPlant.With(nested)).Results).Levels);
    }

    [Fact]
    public void A_result_that_may_be_missing_is_asked_for_with_or()
    {
        var names = SmallPlant.With(ResultScope.Start()
            .Add("trim", ValueShape.Count, [], mayBeMissing: true).Add("drag", Force, [], true).Add("code", ValueShape.Text(), [], true).Add("ok", ValueShape.Truth, [], true)
            .Add("codes", ValueShape.List, [], true));
        var fault = Author.Fault("results.trim + 1", names: names);
        Assert.Equal("EXP015: step 'trim' has no result where it does not apply or is not needed – say what holds then:  results.trim.or(…)", $"{fault.Code}: {fault.Found} – {fault.Hint}");

        Assert.True(Assert.Single(Author.Writes("results.trim.or(0)", names: names).Results).Optional);
        Assert.Equal("7.5", Value("results.trim.or(7.5)", names));
        Assert.Equal("1", Value("results.drag.N.or(1)", names));
        Assert.Equal("1", Value("results.drag.or(results.trim.or(0) > 1 ? rollers.brake_force[\"fr\"] : rollers.brake_force[\"fl\"]).N", names));
        Assert.Equal("none yet", Value("results.code.or(\"none yet\")", names));
        Assert.Equal("no", Value("results.ok.or(false)", names));
        Assert.Equal("none", Value("results.drag.verdict.or(\"none\")", names));
        Assert.Equal("9", Value("results.drag.took.s.or(9)", names));
        Assert.Equal("0", Value("results.trim.or(results.drag.N.or(0))", names));

        _scope.Result("trim", new NumberValue(2m, null)).Result("drag", new NumberValue(3m, UnitTable.Required("N")));
        Assert.Equal("2", Value("results.trim.or(1 / bus.gear)", names));
        Assert.Equal("3", Value("results.drag.N.or(1)", names));
    }

    [Fact]
    public void A_step_that_came_to_no_value_is_a_fault_unless_asked_with_or()
    {
        var names = SmallPlant.With(ResultScope.Start().Add("drag", Force, [], false));
        _scope.Result("drag", null, Verdict.Error);
        Assert.Equal("'results.drag' has no value", Assert.Throws<ExpressionFault>(() => Value("results.drag.N", names)).Message);
        Assert.Equal("5", Value("results.drag.N.or(5)", names));
    }

    [Fact]
    public void A_later_step_is_known_but_not_judged()
    {
        var before = ResultScope.Start().Add("first", Force, [], false);
        before.Add("second", Force, [], false);
        Assert.Equal(ExpressionCodes.NotJudgedBefore, Author.Fault("results.second.N", names: SmallPlant.With(before)).Code);
        Assert.Equal("0", Value("results.second.N.or(0)", SmallPlant.With(before)));
    }

    [Fact]
    public void Branches_do_not_see_each_other_until_they_have_joined()
    {
        var start = ResultScope.Start();
        var left = start.Add("left", Force, [], false);
        var right = start.Add("right", Force, [], false);
        Assert.Equal(ExpressionCodes.NotJudgedBefore, Author.Fault("results.left.N", names: SmallPlant.With(right)).Code);
        Author.Writes("results.left.N + results.right.N", names: SmallPlant.With(start.Join(left, right)));
    }

    [Fact]
    public void What_a_group_leaves_out_may_be_missing_outside_and_not_inside()
    {
        var inside = ResultScope.Start().Enter("engine", [], isFragment: false).Add("idle", SmallPlant.Number("rpm"), [], false);
        Author.Writes("results.idle.rpm", names: SmallPlant.With(inside));
        Assert.Equal(ExpressionCodes.ResultMayBeMissing, Author.Fault("results.engine.idle.rpm", names: SmallPlant.With(inside.Leave(mayBeMissing: true))).Code);
    }

    [Fact]
    public void A_loop_value_with_a_condition_may_be_missing()
    {
        var fitted = Author.Writes("vehicle.tow", Wanted.Truth, SmallPlant.BeforeRun);
        var scope = ResultScope.Start()
            .Enter("units", [new("ecu", [new("gateway", null), new("brakes", fitted)])], isFragment: false)
            .Add("software", ValueShape.Text(), [], false).Leave(false);
        Author.Writes("results.units[\"gateway\"].software", names: SmallPlant.With(scope));
        Assert.Equal(ExpressionCodes.ResultMayBeMissing, Author.Fault("results.units[\"brakes\"].software", names: SmallPlant.With(scope)).Code);
        Assert.Equal(ExpressionCodes.ResultMayBeMissing, Author.Fault("results.units[ecu].software", names: SmallPlant.With(scope)).Code);
    }

    [Fact]
    public void A_computed_result_has_the_shape_of_its_expression()
    {
        var (batch, report) = Begin();
        var scope = ResultScope.Start();
        var speed = Add(batch, "min(bus.vehicle_speed, rollers.speed)", scope);
        scope = scope.Add("slow", speed, false);
        var doubled = Add(batch, "results.slow * 2", scope);
        scope = scope.Add("doubled", doubled, false);
        var condition = Add(batch, "results.doubled.m_s > 1 && results.slow.km_h < 9", scope, Wanted.Truth);
        var number = Add(batch, "results.slow.m_s", scope);
        scope = scope.Add("bare", number, false);
        var wrong = Add(batch, "results.bare + 1", scope);

        Assert.True(batch.Compile(), string.Join('\n', report.InOrder));
        Assert.Equal(SmallPlant.Number("km/h"), doubled.Shape);
        Assert.Equal(ValueShape.Count, wrong.Shape);
        _scope.Result("slow", new NumberValue(5m, UnitTable.Required("km/h"))).Result("doubled", new NumberValue(10m, UnitTable.Required("km/h")));
        Assert.Equal("yes", _scope.Evaluate(condition).ToString());
    }

    [Fact]
    public void A_computed_result_with_a_slip_is_told_once_and_no_more_is_made_of_it()
    {
        var (batch, report) = Begin();
        var scope = ResultScope.Start();
        scope = scope.Add("slow", Add(batch, "bus.vehicle_sped", scope), false);
        Add(batch, "results.slow.km_h > 1", scope, Wanted.Truth);
        Assert.False(batch.Compile());
        Assert.Equal(["EXP005"], report.InOrder.Select(finding => finding.Code.Id));
    }

    [Fact]
    public void Results_that_are_computed_from_each_other_are_refused()
    {
        var (batch, report) = Begin();
        var scope = ResultScope.Start();
        var first = Add(batch, "results.second.or(1)", scope);
        scope = scope.Add("first", first, false);
        var second = Add(batch, "results.first", scope);
        scope.Add("second", second, false);
        Assert.False(batch.Compile());
        Assert.Equal(["EXP028", "EXP028"], report.InOrder.Select(finding => finding.Code.Id));
    }

    private static (ExpressionBatch Batch, Report Report) Begin()
    {
        var report = new Report();
        return (new ExpressionBatch(report, ExpressionCache.None), report);
    }

    private static Expression Add(ExpressionBatch batch, string text, ResultScope scope, Wanted? wanted = null)
    {
        var node = Texts.FirstScalar($"compute: '{text}'");
        return batch.Add(node, 0, text.Length, SmallPlant.With(scope), wanted ?? Wanted.Anything);
    }

    private static ResultScope Wheels() =>
        ResultScope.Start().Enter("wheel_nuts", SmallPlant.Each("wheel", "fl", "fr", "rl", "rr"), isFragment: false);

    private static string FaultOf(string text, ExpressionNames names)
    {
        var fault = Author.Fault(text, names: names);
        return $"{fault.Code} {fault.Hint}";
    }

    private string Value(string text, ExpressionNames names)
    {
        _scope.With("rollers.brake_force[fl]", 1m, "N").With("rollers.brake_force[fr]", 2m, "N").With("bus.gear", 0m);
        return Author.Value(text, _scope, names: names).ToString()!;
    }
}
