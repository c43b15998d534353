using CsCheck;
using EolSequencer.Wire.Obd;

namespace EolSequencer.Wire.Tests.Obd;

// A formula with a wrong divisor shows a believable value. Values agree with the dissection of tshark 4.0.17 and with
// scapy 2.5.0 (run), and with the values asserted in the test suite of python-OBD (tests/test_decoders.py).
// Where two of them differ, the one that follows the text of SAE J1979 stands here.
public class ParameterTableTests
{
    [Theory]
    [InlineData(0x04, "FF", "100", "%")]
    [InlineData(0x05, "7B", "83", "°C")]
    [InlineData(0x05, "00", "-40", "°C")]
    [InlineData(0x05, "FF", "215", "°C")]
    [InlineData(0x06, "90", "12.5", "%")]
    [InlineData(0x07, "80", "0", "%")]
    [InlineData(0x0A, "64", "300", "kPa")]
    [InlineData(0x0A, "80", "384", "kPa")]
    [InlineData(0x0A, "FF", "765", "kPa")]
    [InlineData(0x0B, "64", "100", "kPa")]
    [InlineData(0x33, "65", "101", "kPa")]
    [InlineData(0x0C, "1AF8", "1726", "rpm")]
    [InlineData(0x0C, "0A6B", "666.75", "rpm")]
    [InlineData(0x0C, "2080", "2080", "rpm")]
    [InlineData(0x0C, "FFFF", "16383.75", "rpm")]
    [InlineData(0x0D, "32", "50", "km/h")]
    [InlineData(0x0E, "80", "0", "deg")]
    [InlineData(0x0F, "3C", "20", "°C")]
    [InlineData(0x46, "32", "10", "°C")]
    [InlineData(0x5C, "7B", "83", "°C")]
    [InlineData(0x10, "0100", "2.56", "g/s")]
    [InlineData(0x1F, "0E10", "3600", "s")]
    [InlineData(0x21, "0064", "100", "km")]
    [InlineData(0x31, "6500", "25856", "km")]
    [InlineData(0x22, "4E20", "1580", "kPa")]
    [InlineData(0x23, "0064", "1000", "kPa")]
    [InlineData(0x3C, "1068", "380", "°C")]
    [InlineData(0x42, "3039", "12.345", "V")]
    [InlineData(0x42, "312C", "12.588", "V")]
    [InlineData(0x43, "01FE", "200", "%")]
    [InlineData(0x43, "FFFF", "25700", "%")]
    [InlineData(0x44, "8000", "1", null)]
    [InlineData(0x51, "01", "1", null)]
    [InlineData(0x5E, "0140", "16", "L/h")]
    [InlineData(0x5E, "FFFF", "3276.75", "L/h")]
    [InlineData(0x61, "7D", "0", "%")]
    [InlineData(0x62, "0D", "-112", "%")]
    [InlineData(0x63, "01F4", "500", "N·m")]
    public void A_parameter_has_its_value_and_unit(byte id, string data, string value, string? unit)
    {
        var parameter = ParameterTable.Find(id)!;
        var only = Assert.Single(parameter.Values);
        Assert.Equal(data.Length / 2, parameter.Length);
        Assert.True(only.TryRead(Text.Bytes(data), out var read));
        Assert.Equal(Text.Number(value), read);
        Assert.Equal(unit, only.Unit?.Symbol);
    }

    [Theory]
    [InlineData(0x04, "80", "50.196")]
    [InlineData(0x11, "80", "50.196")]
    [InlineData(0x2E, "80", "50.196")]
    [InlineData(0x2F, "80", "50.196")]
    [InlineData(0x45, "80", "50.196")]
    [InlineData(0x49, "80", "50.196")]
    [InlineData(0x08, "FF", "99.219")]
    [InlineData(0x43, "7FFF", "12849.804")]
    public void A_value_without_an_end_is_right_to_three_places(byte id, string data, string value)
    {
        Assert.True(ParameterTable.Find(id)!.Values[0].TryRead(Text.Bytes(data), out var read));
        Assert.Equal(Text.Number(value), Math.Round(read, 3));
    }

    [Theory]
    [InlineData(0x14, "5A80", "0.45", "0")]
    [InlineData(0x15, "A078", "0.8", "-6.25")]
    [InlineData(0x1B, "5AFF", "0.45", null)]
    public void An_oxygen_sensor_gives_its_voltage_and_a_trim_that_may_be_unused(byte id, string data, string voltage, string? trim)
    {
        var values = ParameterTable.Find(id)!.Values;
        Assert.True(values[0].TryRead(Text.Bytes(data), out var volts));
        Assert.Equal(Text.Number(voltage), volts);
        Assert.Equal(trim is not null, values[1].TryRead(Text.Bytes(data), out var percent));
        Assert.True(trim is null || percent == Text.Number(trim));
    }

    [Fact]
    public void Every_raw_number_reads_back_from_its_value() =>
        Gen.OneOf(ParameterTable.All.SelectMany(p => p.Values.Select(v => (Parameter: p, Value: v))).ToArray())
            .Select(Gen.Byte.Array[4])
            .Sample((row, bytes) =>
            {
                row.Value.TryRead(bytes, out var value);
                var written = bytes.ToArray();
                row.Value.Write(written, value);
                Assert.Equal(bytes, written);
            });

    [Theory]
    [InlineData(0x05, "-41", "00")]
    [InlineData(0x05, "1000", "FF")]
    [InlineData(0x0C, "666.8", "0A6B")]
    public void A_value_that_lies_between_or_beyond_takes_the_nearest_raw_number(byte id, string value, string data)
    {
        var parameter = ParameterTable.Find(id)!;
        var bytes = new byte[parameter.Length];
        parameter.Values[0].Write(bytes, Text.Number(value));
        Assert.Equal(data, Convert.ToHexString(bytes));
    }

    [Fact]
    public void A_parameter_that_is_not_decoded_is_not_found() => Assert.Null(ParameterTable.Find(0x54));
}
