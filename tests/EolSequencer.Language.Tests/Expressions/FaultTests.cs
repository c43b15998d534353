using EolSequencer.Language.Expressions;
using EolSequencer.Language.Tests.Expressions.Kit;
using EolSequencer.Model.Units;
using EolSequencer.Model.Values;

namespace EolSequencer.Language.Tests.Expressions;

/// <summary>Every slip of an author is told at its characters, in words of the shop floor, with what may have been meant.</summary>
public class FaultTests
{
    [Theory]
    [InlineData("bsu.brake_switch", "EXP004", "bsu", "'bsu' means nothing here", "did you mean 'bus'?")]
    [InlineData("bus.brake_swich", "EXP005", "brake_swich", "'brake_swich' is no channel of 'bus'", "did you mean 'brake_switch'?")]
    [InlineData("bus", "EXP014", "bus", "behind 'bus' a point and a name is due", null)]
    [InlineData("vehicle.dirve == \"fwd\"", "EXP006", "dirve", "'dirve' is no option of vehicle type 'orrin'", "did you mean 'drive'?")]
    [InlineData("order.softwear[ecu]", "EXP007", "softwear", "'softwear' is no fact of an order", "did you mean 'software'?")]
    [InlineData("bus.engine_speed.rmp > 5", "EXP009", "rmp", "'rmp' is no unit of 'bus.engine_speed', a rotational speed", "did you mean 'rpm'?")]
    [InlineData("bus.engine_speed.km_h > 5", "EXP009", "km_h", "km/h is a unit of speed, 'bus.engine_speed' is a rotational speed", "its units are .deg_s or .rpm")]
    [InlineData("bus.gear.rpm", "EXP009", "rpm", "'bus.gear' is a plain number and has no unit", "leave the point and the name out")]
    [InlineData("(bus.vehicle_speed * 2).rpm", "EXP009", "rpm", "'rpm' is no unit of speed", "its units are .km_h, .m_s or .mph")]
    [InlineData("(bus.gear * 2).rpm", "EXP009", "rpm", "a bare number has no 'rpm'", "leave the point and the name out")]
    [InlineData("asb(bus.gear)", "EXP010", "asb", "there is no function 'asb'", "did you mean 'abs'?")]
    [InlineData("bus.door_ajar", "EXP011", "bus.door_ajar", "'bus.door_ajar' has an index: 'front_left', 'front_right' or 'rear'", "write  bus.door_ajar[\"front_left\"]  or a loop name in the brackets")]
    [InlineData("bus.gear[door]", "EXP012", "[door]", "'bus.gear' has no index", "leave the square brackets out")]
    [InlineData("bus.door_ajar[\"raer\"]", "EXP013", "\"raer\"", "'bus.door_ajar' has no 'raer'", "did you mean 'rear'?")]
    [InlineData("bus.door_ajar[rear]", "EXP004", "rear", "'rear' is no loop name or parameter here", "write  [\"rear\"]")]
    [InlineData("bus.door_ajar[side]", "EXP013", "side", "'side' can be 'left', which 'bus.door_ajar' does not have", null)]
    [InlineData("bus.door_ajar[note]", "EXP013", "note", "'note' is text, so it may be something that 'bus.door_ajar' does not have", null)]
    [InlineData("bus.door_ajar[door, door]", "EXP013", "[door, door]", "'bus.door_ajar' has one index, not 2", null)]
    [InlineData("vehicle.drive == \"adw\"", "EXP018", "\"adw\"", "'vehicle.drive' is 'fwd' or 'awd', never 'adw'", "did you mean \"awd\"?")]
    [InlineData("\"Left\" != side", "EXP018", "\"Left\"", "'side' is 'left' or 'right', never 'Left'", "did you mean \"left\"?")]
    [InlineData("(vehicle.drive) is \"fwd\" or \"4wd\"", "EXP018", "\"4wd\"", "'vehicle.drive' is 'fwd' or 'awd', never '4wd'", "did you mean \"fwd\"?")]
    [InlineData("vehicle.drive == side", "EXP018", "side", "'vehicle.drive' is 'fwd' or 'awd', 'side' is 'left' or 'right': they are never equal", null)]
    [InlineData("bus.engine_speed >= 500", "EXP019", "bus.engine_speed >= 500", "a rotational speed and a bare number meet at '>='", "take the number with a unit: .deg_s or .rpm")]
    [InlineData("bus.engine_speed > bus.vehicle_speed", "EXP020", "bus.engine_speed > bus.vehicle_speed", "a rotational speed and a speed meet at '>'", null)]
    [InlineData("bus.coolant - bus.oil", "EXP027", "bus.coolant - bus.oil", "a temperature and a temperature meet at '-'", "take their numbers with a unit: .kelvin, .celsius or .fahrenheit")]
    [InlineData("vehicle.tow == \"yes\"", "EXP027", "vehicle.tow == \"yes\"", "yes or no and a text meet at '=='", "a truth value stands alone, with ! in front for not")]
    [InlineData("bus.gear == \"3\"", "EXP027", "bus.gear == \"3\"", "a bare number and a text meet at '=='", "write numbers without quotes")]
    [InlineData("!bus.gear", "EXP027", "!bus.gear", "'!' does not fit a bare number", null)]
    [InlineData("\"5\" + 3", "EXP023", "\"5\" + 3", "a text and something else are put together with +", null)]
    [InlineData("bus.brake_switch = true", "EXP003", "=", "an expression assigns nothing", "compare with ==")]
    [InlineData("1.5f * 2", "EXP025", "1.5f", "'1.5f' is binary floating point", "write 1.5")]
    [InlineData("10L * 2", "EXP025", "10L", "'10L' ends in a letter", "write 10")]
    [InlineData("1e40", "EXP025", "1e40", "'1e40' is larger than any number here, 7.9e28", null)]
    [InlineData("2000000000 * 3", "EXP025", "2000000000 * 3", "the result is larger than a whole number can be", "write one of the numbers with a point, such as 2.0")]
    [InlineData("bus.gear / 0.0", "EXP027", "bus.gear / 0.0", "division by zero", "the result would not be finite")]
    [InlineData("1,5", "EXP001", ",", null, null)]
    [InlineData("bus.gear > ", "EXP001", "", null, null)]
    [InlineData("run.verdict == \"pass\"", "EXP004", "run.verdict", "the verdict of the run is not known here", "only steps of after-verdict may ask for it")]
    [InlineData("rpm", "EXP004", "rpm", "'rpm' means nothing here", "a unit stands behind a point: bus.engine_speed.rpm")]
    [InlineData("edges(bus.gear)", "EXP003", "edges(bus.gear)", "edges counts while a step waits", null)]
    [InlineData("$\"{bus.gear:N2}\"", "EXP026", "N2", "'N2' is no format for a number here", null)]
    [InlineData("$\"{bus.gear,9}\"", "EXP026", ",9", "there is no alignment in expressions", null)]
    public void A_slip_is_told_at_its_characters(string text, string code, string pointed, string? found, string? hint)
    {
        var fault = Author.Fault(text);
        Assert.Equal(code, fault.Code.Id);
        if (found is not null) Assert.Equal(found, fault.Found);
        if (hint is not null) Assert.Equal(hint, fault.Hint);
        Assert.Equal(pointed, Author.Pointed(text, fault));
    }

    [Theory]
    [Trait("case", "EXP-06")]
    [InlineData("2^3")]
    [InlineData("bus.gear^2 * 0.785")]
    [InlineData("pow(bus.gear, 2) * 0.785 > 1 ^ bus.brake_switch")]
    public void A_caret_is_refused(string text)
    {
        var fault = Author.Fault(text);
        Assert.Equal(ExpressionCodes.CaretIsNoPower, fault.Code);
        Assert.Equal("^", Author.Pointed(text, fault));
        Assert.StartsWith("write pow(x, 2)", fault.Hint);
    }

    [Theory]
    [Trait("case", "EXP-03")]
    [InlineData("7/2*1.0", "7/2")]
    [InlineData("(1 + 2) / (3)", "(1 + 2) / (3)")]
    [InlineData("bus.gear * (1 / 3)", "1 / 3")]
    [InlineData("note.Length / 2 > 1.5", "note.Length / 2")]
    [InlineData("bus.stored_codes.Count / 2", "bus.stored_codes.Count / 2")]
    public void Two_whole_numbers_are_not_divided(string text, string pointed)
    {
        var fault = Author.Fault(text);
        Assert.Equal(ExpressionCodes.WholeDivision, fault.Code);
        Assert.Equal(pointed, Author.Pointed(text, fault));
    }

    [Fact]
    public void A_condition_wants_yes_or_no()
    {
        var fault = Author.Fault("bus.engine_speed", Wanted.Truth);
        Assert.Equal("EXP024: this gives a rotational speed, wanted is yes or no – compare it, for example  .deg_s >= 1", $"{fault.Code}: {fault.Found} – {fault.Hint}");
    }

    [Fact]
    public void A_time_wants_a_unit_of_time()
    {
        Assert.Equal("this gives a bare number, wanted is a time", Author.Fault("5", Wanted.Time).Found);
        Assert.Equal("this gives a speed, wanted is a time", Author.Fault("bus.vehicle_speed", Wanted.Time).Found);
        Assert.Equal("this gives a speed, wanted is a bare number", Author.Fault("bus.vehicle_speed", Wanted.Count).Found);
        Assert.Equal("this gives a pressure, wanted is a voltage", Author.Fault("bus.pressure", Wanted.In(UnitTable.Required("V"))).Found);
    }

    [Fact]
    public void A_place_with_choices_takes_what_is_known_to_be_one_of_them()
    {
        var wanted = Wanted.Of(ValueShape.OneOf("fwd", "awd", "rwd"));
        Assert.Equal(ValueShape.OneOf("fwd", "awd"), Author.Writes("vehicle.drive", wanted).Shape);
        Assert.Equal(ValueShape.OneOf("rwd"), Author.Writes("\"rwd\"", wanted).Shape);
        Assert.Equal(ExpressionCodes.WrongKind, Author.Fault("side", wanted).Code);
        Assert.Equal(ExpressionCodes.WrongKind, Author.Fault("note", wanted).Code);
        Assert.Equal(ExpressionCodes.WrongKind, Author.Fault("\"4wd\"", wanted).Code);
    }

    [Fact]
    public void Before_the_run_no_device_is_named()
    {
        var fault = Author.Fault("bus.brake_switch", Wanted.Truth, SmallPlant.BeforeRun);
        Assert.Equal("'bus' means nothing here", fault.Found);
        Assert.EndsWith("devices are not asked yet", fault.Hint);
    }

    [Fact]
    public void Two_slips_in_one_text_are_both_told()
    {
        var report = Author.Compile("bus.brake_swich && vehicle.drive == \"adw\"").Report;
        Assert.Equal(["EXP005", "EXP018"], report.InOrder.Select(finding => finding.Code.Id));
    }

    [Fact]
    public void A_text_that_is_much_too_long_is_refused_at_once()
    {
        Assert.Equal(ExpressionCodes.TooLong, Author.Fault(new string('!', 3000) + "true").Code);
        Assert.Equal(ExpressionCodes.TooLong, Author.Fault(new string('(', 100) + "1" + new string(')', 100)).Code);
        Author.Writes(string.Concat(Enumerable.Repeat("1+", 900)) + "1");
        Author.Writes(new string('!', 1900) + "bus.brake_switch");
    }
}
