using EolSequencer.Model.Values;

namespace EolSequencer.Model.Tests.Values;

/// <summary>Instruments say overload with a very large number; taken as data it would pass every window without an upper end.</summary>
/// <remarks>Values of infinity and not-a-number: SCPI-1999 volume 1, 7.2.1.4 and 7.2.1.5; number forms: IEEE 488.2 NR1 to NR3.</remarks>
public class InstrumentNumberTests
{
    [Theory]
    [InlineData("12", "12")]
    [InlineData(" 1.25", "1.25")]
    [InlineData("-.5", "-0.5")]
    [InlineData("5.", "5")]
    [InlineData("+1.234E+01", "12.34")]
    [InlineData("-1.5e-3", "-0.0015")]
    [InlineData("007", "7")]
    public void The_number_forms_of_instruments_are_read_exactly(string text, string canonical)
    {
        var number = Assert.IsType<InstrumentReading.Number>(InstrumentNumber.Parse(text));
        Assert.Equal(canonical, NumberText.Of(number.Value));
    }

    [Fact, Trait("case", "SCP-02")]
    public void Overload_and_not_a_number_are_no_data()
    {
        Assert.Equal(new InstrumentReading.Overload(true), InstrumentNumber.Parse("+9.90000000E+37"));
        Assert.Equal(new InstrumentReading.Overload(false), InstrumentNumber.Parse("-9.9E37"));
        Assert.Equal(new InstrumentReading.NotANumber(), InstrumentNumber.Parse("9.91E+37"));
    }

    [Theory, Trait("case", "SCP-03")]
    [InlineData("+4.0000E+03", true)]
    [InlineData("4.5E+00", false)]
    public void A_whole_number_may_come_with_an_exponent(string text, bool whole) =>
        Assert.Equal(whole, Assert.IsType<InstrumentReading.Number>(InstrumentNumber.Parse(text)).IsWhole);

    [Theory]
    [InlineData("")]
    [InlineData("1,5")]
    [InlineData("1.5 V")]
    [InlineData("1.2.3")]
    [InlineData("E5")]
    [InlineData("1E")]
    [InlineData("NaN")]
    [InlineData("1E30")]
    [InlineData("1.5\r")]
    public void Anything_else_is_malformed_and_quoted(string text) =>
        Assert.Contains($"'{text}'", Assert.IsType<InstrumentReading.Malformed>(InstrumentNumber.Parse(text)).Why);
}
