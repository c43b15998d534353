using EolSequencer.Language.Expressions;
using EolSequencer.Language.Tests.Expressions.Kit;
using EolSequencer.Model.Expressions;
using EolSequencer.Model.Judging;
using EolSequencer.Model.Units;
using EolSequencer.Model.Values;

namespace EolSequencer.Language.Tests.Expressions;

/// <summary>An expression means what it says: decimals are exact, units convert, nothing is lost on the way.</summary>
public class ValueTests
{
    private readonly FixedScope _scope = new();

    [Fact]
    public void A_number_is_taken_in_a_unit_by_name()
    {
        _scope.With("bus.vehicle_speed", 36m, "km/h");
        Assert.Equal(new NumberValue(10m, null), Author.Value("bus.vehicle_speed.m_s", _scope));
        Assert.Equal(TruthValue.Yes, Author.Value("bus.vehicle_speed.km_h >= 36", _scope));
    }

    [Fact]
    public void A_reading_in_another_unit_of_the_dimension_is_converted()
    {
        _scope.With("bus.pressure", 240m, "kPa");
        Assert.Equal(new NumberValue(2.4m, null), Author.Value("bus.pressure.bar", _scope));
    }

    [Fact]
    public void A_quantity_keeps_the_unit_of_its_channel()
    {
        _scope.With("bus.vehicle_speed", 36m, "km/h").With("rollers.speed", 5m, "m/s");
        var expression = Author.Writes("max(rollers.speed, bus.vehicle_speed)");
        Assert.Equal(SmallPlant.Number("km/h"), expression.Shape);
        Assert.Equal(new NumberValue(36m, UnitTable.Required("km/h")), _scope.Evaluate(expression));
    }

    [Fact]
    public void Quantities_are_compared_and_added_in_whatever_unit_they_come()
    {
        _scope.With("bus.vehicle_speed", 36m, "km/h").With("rollers.speed", 10m, "m/s");
        Assert.Equal(TruthValue.Yes, Author.Value("bus.vehicle_speed == rollers.speed", _scope));
        Assert.Equal(new NumberValue(72m, UnitTable.Required("km/h")), Author.Value("bus.vehicle_speed + rollers.speed", _scope));
        Assert.Equal(new NumberValue(1m, null), Author.Value("bus.vehicle_speed / rollers.speed", _scope));
        Assert.Equal(new NumberValue(20m, null), Author.Value("(bus.vehicle_speed * 2).m_s", _scope));
    }

    [Fact]
    public void A_place_that_wants_a_unit_gets_it()
    {
        _scope.With("bus.vehicle_speed", 36m, "km/h").With("travel", 1.5m, "min");
        Assert.Equal(new NumberValue(10m, UnitTable.Required("m/s")), Author.Value("bus.vehicle_speed", _scope, Wanted.In(UnitTable.Required("m/s"))));
        Assert.Equal(new NumberValue(90m, UnitTable.Second), Author.Value("travel", _scope, Wanted.Time));
    }

    [Fact]
    public void A_literal_with_a_point_is_a_decimal()
    {
        Assert.Equal(new NumberValue(0.3m, null), Author.Value("0.1 + 0.2", _scope));
        Assert.Equal(new NumberValue(435m, null), Author.Value("4.35 * 100", _scope));
        Assert.Equal(new NumberValue(1500m, null), Author.Value("1.5e3", _scope));
        Assert.Equal(new NumberValue(0.1234567890123456789012345678m, null), Author.Value("0.1234567890123456789012345678", _scope));
    }

    [Fact]
    [Trait("case", "NUM-07")]
    public void Three_tenths_are_three_tenths()
    {
        _scope.With("turns", 0.1m);
        Assert.Equal(TruthValue.Yes, Author.Value("turns + turns + turns <= 0.3", _scope));
    }

    [Fact]
    [Trait("case", "EXP-03")]
    public void A_whole_number_from_a_device_keeps_its_fraction()
    {
        _scope.With("bus.gear", 7m);
        Assert.Equal(new NumberValue(3.5m, null), Author.Value("bus.gear / 2 * 1.0", _scope));
    }

    [Fact]
    [Trait("case", "EXP-04")]
    public void Counters_do_not_wrap()
    {
        _scope.With("bus.count", 60000m);
        Assert.Equal(new NumberValue(3_600_000_000m, null), Author.Value("bus.count * bus.count", _scope));
    }

    [Theory]
    [Trait("case", "EXP-04")]
    [InlineData("bus.count * bus.count")]
    [InlineData("pow(bus.count, 3)")]
    public void Overflow_is_a_fault_and_no_value(string text)
    {
        _scope.With("bus.count", 50_000_000_000_000_000_000m);
        var fault = Assert.Throws<ExpressionFault>(() => Author.Value(text, _scope));
        Assert.StartsWith("arithmetic overflow", fault.Message);
    }

    [Theory]
    [Trait("case", "NUM-08")]
    [InlineData("bus.count / bus.gear")]
    [InlineData("imbalance(bus.gear, bus.gear)")]
    [InlineData("bus.count % bus.gear")]
    public void Division_by_zero_is_a_fault_and_no_value(string text)
    {
        _scope.With("bus.count", 10m).With("bus.gear", 0m);
        var fault = Assert.Throws<ExpressionFault>(() => Author.Value(text, _scope));
        Assert.Equal("division by zero: the result is not finite", fault.Message);
    }

    [Theory]
    [Trait("case", "NUM-04")]
    [InlineData("sqrt(bus.count) >= 4.5")]
    [InlineData("sqrt(bus.count) <= 5.5")]
    [InlineData("!(sqrt(bus.count) < 4.5 || sqrt(bus.count) > 5.5)")]
    [InlineData("log10(bus.count) != 5")]
    public void What_is_no_number_passes_nothing(string text)
    {
        _scope.With("bus.count", -1m);
        var fault = Assert.Throws<ExpressionFault>(() => Author.Value(text, _scope));
        Assert.EndsWith("(-1) is not finite", fault.Message);
    }

    [Fact]
    public void What_goes_through_binary_floating_point_has_12_digits_and_says_so()
    {
        Assert.Equal(new NumberValue(1.41421356237m, null, Inexact: true), Author.Value("sqrt(2)", _scope));
        _scope.With("bus.count", 2m, inexact: true);
        Assert.Equal(new NumberValue(3m, null, Inexact: true), Author.Value("bus.count + 1", _scope));
        _scope.With("bus.count", 2m);
        Assert.Equal(new NumberValue(3m, null), Author.Value("bus.count + 1", _scope));
    }

    [Theory]
    [InlineData("imbalance(200, 150)", "25")]
    [InlineData("imbalance(150, 200)", "25")]
    [InlineData("abs(-2.5)", "2.5")]
    [InlineData("min(2, 1.5)", "1.5")]
    [InlineData("max(2, 3)", "3")]
    [InlineData("round(2.5)", "3")]
    [InlineData("round(-2.5)", "-3")]
    [InlineData("round(2.345, 2)", "2.35")]
    [InlineData("floor(-1.5)", "-2")]
    [InlineData("ceiling(-1.5)", "-1")]
    [InlineData("pow(1.1, 2)", "1.21")]
    [InlineData("true ? 1 : 2.5", "1")]
    [InlineData("7.5 % 2", "1.5")]
    public void Functions_give_what_they_say(string text, string result) =>
        Assert.Equal(result, Author.Value(text, _scope).ToString());

    [Fact]
    public void Texts_lists_and_truths_are_asked()
    {
        _scope.With("note", "A12-7").With("bus.stored_codes", new ListValue(["P0420", "P0101"])).With("bus.gear", 3m);
        Assert.Equal(TruthValue.Yes, Author.Value("starts(note, \"A1\") && note.Length == 5 && note.Contains(\"12\") && !ends(note, \"8\")", _scope));
        Assert.Equal(new TextValue("12"), Author.Value("note.Substring(1, 2)", _scope));
        Assert.Equal(TruthValue.Yes, Author.Value("bus.stored_codes.Contains(\"P0420\") && bus.stored_codes.Count == 2", _scope));
        Assert.Equal(TruthValue.Yes, Author.Value("bus.gear is 2 or 3 and not 4", _scope));
        Assert.Equal(ValueKind.List, Author.Value("bus.stored_codes", _scope).Kind);
        Assert.Throws<ExpressionFault>(() => Author.Value("note.Substring(9)", _scope));
    }

    [Fact]
    public void Options_order_facts_arguments_and_verdict_are_what_the_scope_says()
    {
        _scope.With("vehicle.drive", "awd").With("vehicle.tow", true).With("vehicle.vin", "X").With("ecu", "brakes")
            .With("order.software[brakes]", "1.0").With("order.software[gateway]", "2.0").With("order.paint", "red").With("side", "left");
        Assert.Equal(TruthValue.Yes, Author.Value("vehicle.drive == \"awd\" && vehicle.tow && side == \"left\"", _scope));
        Assert.Equal(new TextValue("1.0"), Author.Value("order.software[ecu]", _scope));
        Assert.Equal(new TextValue("2.0"), Author.Value("order.software[\"gateway\"]", _scope));
        Assert.Equal(new TextValue("red"), Author.Value("order.paint", _scope));
        Assert.Equal(new TextValue("X"), Author.Value("vehicle.vin", _scope));
        Assert.Equal(TruthValue.Yes, Author.Value("run.verdict == \"pass\"", _scope, names: SmallPlant.Names with { RunVerdict = true }));
    }

    [Fact]
    public void Edges_of_a_channel_are_counted_by_the_scope()
    {
        _scope.With("door", "rear").Edges("bus.door_ajar[rear]", 7);
        Assert.Equal(TruthValue.Yes, Author.Value("edges(bus.door_ajar[door]) / 2 >= 3.5", _scope, Wanted.Truth));
    }

    [Fact]
    public void A_value_of_the_wrong_kind_is_a_fault_and_no_crash()
    {
        _scope.With("bus.brake_switch", "yes");
        var fault = Assert.Throws<ExpressionFault>(() => Author.Value("!bus.brake_switch", _scope));
        Assert.Equal("'yes' came where yes or no was due", fault.Message);
    }
}
