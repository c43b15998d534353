using CsCheck;
using EolSequencer.Devices.Tests.Kit;
using EolSequencer.Devices.VehicleBus;
using EolSequencer.Model.Devices;
using EolSequencer.Model.Judging;
using EolSequencer.Model.Units;
using EolSequencer.Model.Values;

namespace EolSequencer.Devices.Tests.VehicleBus;

/// <summary>Values and bytes as vehicle types describe them: what goes in comes out, and no bytes of a vehicle throw.</summary>
public class FormCodecTests
{
    private static readonly Gen<RawForm> Numbers =
        from bits in Gen.Int[1, 32]
        from isSigned in Gen.Bool
        from isLittle in Gen.Bool
        from scale in Gen.OneOf(1m, 0.01m, 0.5m, 0.079m, 3m, -0.25m)
        from offset in Gen.Int[-1000, 1000]
        select new RawForm
        {
            Type = isSigned && bits > 1 ? RawType.Signed : RawType.Unsigned,
            Length = isLittle || bits <= 8 ? bits : bits / 8 * 8,
            IsLittleEndian = isLittle,
            Scale = scale,
            Offset = offset,
        };

    private static readonly Gen<RawForm> Forms = Gen.OneOf(
        Numbers,
        Gen.Const(Describe.YesNo),
        Gen.Const(new RawForm { Type = RawType.Float32, Length = 32, Scale = 1e20m, Offset = 1e28m }),
        Gen.Int[1, 12].Select(length => Describe.Text(length)),
        Gen.Int[1, 12].Select(length => new RawForm { Type = RawType.Bytes, Length = length }));

    [Fact]
    public void Every_raw_number_decodes_to_a_value_that_encodes_to_it_again() =>
        Gen.Select(Numbers, Gen.ULong).Sample((form, random) =>
        {
            var record = Record(form, random);
            var value = FormCodec.Decode(form, null, record).Value!;
            Assert.Equal(record, FormCodec.Encode(form, value).Record);
        });

    [Fact]
    public void Every_value_within_range_comes_back_to_the_nearest_step() =>
        Gen.Select(Numbers, Gen.ULong, Gen.Int[-49, 49]).Sample((form, random, hundredths) =>
        {
            var exact = (NumberValue)FormCodec.Decode(form, null, Record(form, random)).Value!;
            var near = exact with { Number = exact.Number + (form.Scale * hundredths / 100) };
            var (record, fault) = FormCodec.Encode(form, near);
            Assert.Null(fault);
            Assert.Equal(exact.Number, ((NumberValue)FormCodec.Decode(form, null, record).Value!).Number);
        });

    [Fact]
    public void Every_text_that_fits_comes_back_without_its_padding() =>
        Gen.Select(Gen.Int[0, 12], Gen.Char[' ', '~'].Array[0, 12], Gen.OneOf<byte?>(null, 0x00, 0xFF, 0x20)).Sample((more, characters, padding) =>
        {
            var text = new string(characters).TrimEnd(' ');
            var form = Describe.Text(Math.Max(1, text.Length + more), padding);
            Assert.Equal(text, FormCodec.Decode(form, null, FormCodec.Encode(form, new TextValue(text)).Record).Value!.ToString());
        });

    [Fact]
    public void Shown_bytes_come_back() =>
        Gen.Byte.Array[1, 12].Sample(bytes =>
        {
            var form = new RawForm { Type = RawType.Bytes, Length = bytes.Length };
            var shown = FormCodec.Decode(form, null, bytes).Value!;
            Assert.Equal(Convert.ToHexString(bytes), shown.ToString());
            Assert.Equal(bytes, FormCodec.Encode(form, shown).Record);
        });

    [Fact]
    public void Whatever_bytes_a_unit_sends_there_is_a_value_or_a_cause_and_words_for_it() =>
        Gen.Select(Forms, Gen.Byte.Array[0, 16]).Sample((form, bytes) =>
        {
            var (value, _, detail) = FormCodec.Decode(form, null, bytes);
            Assert.True((value is null) == (detail is not null));
        });

    [Fact]
    public void Bytes_fewer_than_the_form_are_always_a_short_answer() =>
        Gen.Select(Forms, Gen.Byte.Array[0, 12]).Sample((form, bytes) =>
        {
            var needed = form.Type is RawType.Text or RawType.Bytes ? form.Length : (form.Length + 7) / 8;
            if (bytes.Length < needed) Assert.Equal(MissingCause.ShortAnswer, FormCodec.Decode(form, null, bytes).Missing);
        });

    [Theory]
    [InlineData(RawType.Unsigned, 16, 0xFFFF, "FFFF")]
    [InlineData(RawType.Signed, 16, 0x7FFF, "7FFF")]
    [InlineData(RawType.Signed, 16, -32768, "8000")]
    [InlineData(RawType.Signed, 16, 0x8000, "8000")]
    [InlineData(RawType.Signed, 8, -1, "FF")]
    [InlineData(RawType.Float32, 32, 0xFFFFFFFF, "FFFFFFFF")]
    public void A_marker_is_a_pattern_of_bits_however_it_is_written(RawType type, int bits, long marker, string record)
    {
        var form = new RawForm { Type = type, Length = bits, Invalid = [1, marker] };
        var (value, missing, detail) = FormCodec.Decode(form, null, Convert.FromHexString(record));
        Assert.Equal((null, MissingCause.InvalidMarker, $"the unit marks its value as invalid (raw {record})"), (value, missing, detail));
    }

    [Theory]
    [InlineData(false, "0ABE", "2750")]
    [InlineData(true, "0ABE", "48650")]
    public void Several_bytes_count_in_their_order(bool isLittle, string record, string expected) =>
        Assert.Equal(expected, FormCodec.Decode(Describe.Number(16) with { IsLittleEndian = isLittle }, null, Convert.FromHexString(record)).Value!.ToString());

    [Fact, Trait("case", "CAN-04")]
    public void A_big_endian_field_further_back_begins_at_its_own_first_bit() =>
        Assert.Equal("27.50", FormCodec.Decode(Describe.Number(16, 0.01m), new BitRange(8, 16), Convert.FromHexString("080ABE0000000000")).Value!.ToString());

    [Theory]
    [InlineData("3DCCCCCD", "0.1")]
    [InlineData("C1480000", "-12.5")]
    public void A_float_is_the_shortest_decimal_and_inexact(string record, string expected)
    {
        var value = (NumberValue)FormCodec.Decode(new RawForm { Type = RawType.Float32, Length = 32 }, null, Convert.FromHexString(record)).Value!;
        Assert.Equal((expected, true), (value.ToString(), value.Inexact));
    }

    [Theory]
    [InlineData("7FC00000")]
    [InlineData("7F800000")]
    [InlineData("FF7FFFFF")]
    public void A_float_without_a_decimal_is_not_finite(string record) =>
        Assert.Equal(MissingCause.NotFinite, FormCodec.Decode(new RawForm { Type = RawType.Float32, Length = 32 }, null, Convert.FromHexString(record)).Missing);

    [Fact]
    public void A_value_that_scaling_makes_too_large_is_not_finite() =>
        Assert.Equal(MissingCause.NotFinite, FormCodec.Decode(Describe.Number(32, 1e20m), null, Convert.FromHexString("FFFFFFFF")).Missing);

    [Fact]
    public void A_value_is_converted_to_the_unit_of_the_form() =>
        Assert.Equal("04D2", Convert.ToHexString(FormCodec.Encode(Describe.Number(16, 0.01m, "A"), new NumberValue(12340, UnitTable.Required("mA"))).Record!));

    [Theory]
    [InlineData("256", "256 is beyond the range of 8 bits")]
    [InlineData("-1", "-1 is beyond the range of 8 bits")]
    [InlineData("79228162514264337593543950335", "79228162514264337593543950335 is beyond the range of 8 bits")]
    public void A_number_that_does_not_fit_is_a_fault(string number, string fault) =>
        Assert.Equal((null, fault), FormCodec.Encode(Describe.Number(8, 1m) with { Offset = number.Length > 9 ? -1 : 0 }, new NumberValue(decimal.Parse(number), null)));

    [Theory]
    [InlineData("0A", true)]
    [InlineData("0", false)]
    [InlineData("0A0B", false)]
    [InlineData("0G", false)]
    public void Shown_bytes_are_two_digits_each(string digits, bool fits) =>
        Assert.Equal(fits, FormCodec.Encode(new RawForm { Type = RawType.Bytes, Length = 1 }, new TextValue(digits)).Fault is null);

    [Fact]
    public void A_value_of_another_kind_has_no_place() =>
        Assert.Equal("yes has no place in a raw value of type Unsigned", FormCodec.Encode(Describe.Number(8), TruthValue.Yes).Fault);

    private static byte[] Record(RawForm form, ulong random)
    {
        var whole = FormCodec.Encode(form with { Type = RawType.Unsigned, Scale = 1, Offset = 0 }, new NumberValue(random & (ulong.MaxValue >> (64 - form.Length)), null));
        return whole.Record!;
    }
}
