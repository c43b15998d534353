using System.Text;
using EolSequencer.Wire.Scpi;

namespace EolSequencer.Wire.Tests.Scpi;

// Source of the forms: IEEE 488.2-1992 clause 8.7 and SCPI-1999 (both public in their command reference).
public class ScpiDataTests
{
    [Theory]
    [InlineData("1,2", "1|2")]
    [InlineData("\"a,b\", 2", "\"a,b\"|2")]
    [InlineData("'it''s',x", "'it''s'|x")]
    [InlineData("#13a,b,c", "#13a,b|c")]
    [InlineData("1,,2", "1||2")]
    [InlineData("1,", "1|")]
    [InlineData("", "")]
    public void Fields_are_separated_outside_of_quotes_and_blocks(string answer, string fields) =>
        Assert.Equal(fields, string.Join('|', ScpiFields.Split(Encoding.ASCII.GetBytes(answer)).Value.Select(field => Encoding.ASCII.GetString(field.Span))));

    [Theory]
    [InlineData("\"open")]
    [InlineData("1,#15ab")]
    public void What_does_not_end_is_told(string answer) =>
        Assert.Contains("without an end", ScpiFields.Split(Encoding.ASCII.GetBytes(answer)).Fault, StringComparison.Ordinal);

    [Theory]
    [InlineData("\"say \"\"go\"\"\"", "say \"go\"")]
    [InlineData("'it''s'", "it's")]
    [InlineData("OK", "OK")]
    public void A_string_loses_its_quotes(string field, string text)
    {
        Assert.Equal(text, ScpiFields.Text(Encoding.ASCII.GetBytes(field)).Value);
        Assert.Equal(text, ScpiFields.Text(Encoding.ASCII.GetBytes(ScpiFields.Quote(text))).Value);
    }

    [Theory]
    [InlineData("1", true)]
    [InlineData("ON", true)]
    [InlineData("off", false)]
    [InlineData("0", false)]
    [InlineData("2", null)]
    [InlineData("", null)]
    public void Truth_is_1_or_0(string field, bool? truth)
    {
        var read = ScpiFields.Truth(Encoding.ASCII.GetBytes(field));
        Assert.Equal(truth is null, read.Fault is not null);
        if (truth is { } value) Assert.Equal(value, read.Value);
    }

    [Theory]
    [InlineData("-113,\"Undefined header\"", -113, "Undefined header")]
    [InlineData("0,\"No error\"", 0, "No error")]
    [InlineData("+0,\"No error\"", 0, "No error")]
    [InlineData("-222,\"Data out of range; 12, 13\"", -222, "Data out of range; 12, 13")]
    [InlineData("101", 101, "")]
    public void An_entry_of_the_error_queue(string answer, int code, string text) =>
        Assert.Equal(new ScpiError(code, text), ScpiError.Read(Encoding.ASCII.GetBytes(answer)).Value);

    [Theory]
    [InlineData("")]
    [InlineData("OK")]
    [InlineData("1.5")]
    [InlineData("-113,\"Undefined")]
    [InlineData("-99999,\"x\"")]
    public void Anything_else_is_no_entry(string answer) => Assert.NotNull(ScpiError.Read(Encoding.ASCII.GetBytes(answer)).Fault);

    [Theory]
    [InlineData("ACME,DMM,0,1.0", "ACME|DMM|0|1.0")]
    [InlineData("Maker, Model 5 ,SN1,A,B", "Maker|Model 5|SN1|A,B")]
    public void An_identity_has_four_fields(string answer, string fields)
    {
        var identity = ScpiIdentity.Read(Encoding.ASCII.GetBytes(answer)).Value;
        Assert.Equal(fields, $"{identity.Maker}|{identity.Model}|{identity.Serial}|{identity.Version}");
    }

    [Theory]
    [InlineData("1.5")]
    [InlineData("a,b,c")]
    public void A_measured_value_is_no_identity(string answer) => Assert.NotNull(ScpiIdentity.Read(Encoding.ASCII.GetBytes(answer)).Fault);

    [Theory]
    [InlineData("#15hello", "hello")]
    [InlineData("#205hello", "hello")]
    [InlineData("#0hello", "hello")]
    [InlineData("#10", "")]
    public void A_block_has_its_bytes(string message, string data) =>
        Assert.Equal(data, Encoding.ASCII.GetString(BlockData.Read(Encoding.ASCII.GetBytes(message)).Value));

    [Theory]
    [InlineData("#16hello")]
    [InlineData("#14hello")]
    [InlineData("hello")]
    [InlineData("#")]
    [InlineData("#3a")]
    public void A_broken_block_is_told(string message) => Assert.NotNull(BlockData.Read(Encoding.ASCII.GetBytes(message)).Fault);

    [Theory]
    [InlineData("MEAS:CURR?", true)]
    [InlineData(":measure:current?", true)]
    [InlineData("MEAS:CURRENT?", true)]
    [InlineData("MEASU:CURR?", false)]
    [InlineData("MEAS:CURR", false)]
    [InlineData("MEAS?", false)]
    public void Only_short_and_long_forms_of_a_header_are_valid(string header, bool isMeant) =>
        Assert.Equal(isMeant, new ScpiHeader("MEASure:CURRent?").Matches(header));

    [Fact]
    public void Commands_of_a_message_are_separated_outside_of_quotes()
    {
        var commands = ScpiCommand.Read("*CLS; DISP:TEXT \"a;b\", 2;;MEAS:VOLT?"u8).Value;
        Assert.Equal(["*CLS", "DISP:TEXT", "MEAS:VOLT?"], commands.Select(command => command.Header));
        Assert.Equal(["\"a;b\"", "2"], commands[1].Parameters);
        Assert.Equal([false, false, true], commands.Select(command => command.IsQuery));
    }
}
