using System.Collections.Immutable;
using EolSequencer.Model.Devices;
using EolSequencer.Model.Judging;
using EolSequencer.Model.Values;
using EolSequencer.Wire;
using EolSequencer.Wire.Can;

namespace EolSequencer.Devices.VehicleBus;

/// <summary>Values from bytes and bytes from values, as a vehicle type describes their form.</summary>
internal static class FormCodec
{
    /// <summary>Reads a value out of a record; whatever bytes a unit sends, this gives a result.</summary>
    /// <param name="bits">Where it lies; null: at the record's beginning.</param>
    /// <returns>The value, or why the bytes hold none.</returns>
    public static (Value? Value, MissingCause Missing, string? Detail) Decode(RawForm form, BitRange? bits, ReadOnlySpan<byte> record)
    {
        if (form.Type is RawType.Text or RawType.Bytes) return DecodeText(form, bits, record);
        var layout = Layout(form, bits);
        if (record.Length < layout.BytesNeeded) return Short(record.Length, layout.BytesNeeded);
        var raw = layout.ReadBits(record);
        if (form.Type == RawType.YesNo) return (TruthValue.Of(raw != 0), default, null);
        if (IsInvalid(form.Invalid, raw, layout.BitCount)) return (null, MissingCause.InvalidMarker, $"the unit marks its value as invalid (raw {raw:X})");
        if (!layout.TryGetRaw(raw, out var number)) return (null, MissingCause.NotFinite, "the value is not finite");
        try
        {
            return (new NumberValue((number * form.Scale) + form.Offset, form.Unit, form.Type == RawType.Float32), default, null);
        }
        catch (OverflowException)
        {
            return (null, MissingCause.NotFinite, "the value is beyond what a decimal holds");
        }
    }

    /// <summary>Makes the bytes of a value; numbers are converted to the form's unit and rounded to its steps.</summary>
    /// <returns>The bytes, or why the form cannot hold the value.</returns>
    public static (byte[]? Record, string? Fault) Encode(RawForm form, Value value) => (form.Type, value) switch
    {
        (RawType.Text, TextValue text) => EncodeText(form, text.Text),
        (RawType.Bytes, TextValue text) => EncodeBytes(form, text.Text),
        (RawType.YesNo, TruthValue truth) => ([truth.IsTrue ? (byte)1 : (byte)0], null),
        (not (RawType.Text or RawType.Bytes or RawType.YesNo), NumberValue number) => EncodeNumber(form, number),
        _ => (null, $"{value} has no place in a raw value of type {form.Type}"),
    };

    private static (Value?, MissingCause, string?) DecodeText(RawForm form, BitRange? bits, ReadOnlySpan<byte> record)
    {
        var from = (bits?.First ?? 0) / 8;
        if (record.Length < from + form.Length) return Short(Math.Max(0, record.Length - from), form.Length);
        var field = record.Slice(from, form.Length);
        if (form.Type == RawType.Bytes) return (new TextValue(Convert.ToHexString(field)), default, null);
        var text = form.Padding is { } padding ? PaddedText.Read(field, padding) : PaddedText.Read(field);
        return text.TryGet(out var found) ? (new TextValue(found), default, null) : (null, MissingCause.InvalidMarker, text.Fault);
    }

    private static (Value?, MissingCause, string?) Short(int present, int needed) =>
        (null, MissingCause.ShortAnswer, $"short answer ({present} of {needed} bytes)");

    private static (byte[]?, string?) EncodeText(RawForm form, string text)
    {
        if (text.Length > form.Length || text.AsSpan().ContainsAnyExceptInRange(' ', '~')) return (null, $"'{text}' does not fit into {form.Length} ASCII characters");
        var record = new byte[form.Length];
        PaddedText.Write(record, text, form.Padding ?? (byte)' ');
        return (record, null);
    }

    private static (byte[]?, string?) EncodeBytes(RawForm form, string digits) =>
        digits.Length == form.Length * 2 && digits.AsSpan().IndexOfAnyExcept("0123456789ABCDEFabcdef") < 0
            ? (Convert.FromHexString(digits), null)
            : (null, $"'{digits}' is not {form.Length} bytes in hexadecimal digits");

    private static (byte[]?, string?) EncodeNumber(RawForm form, NumberValue number)
    {
        var layout = Layout(form, null);
        try
        {
            if (number.TryIn(form.Unit, out var physical) && layout.TryGetBits((physical - form.Offset) / form.Scale, out var bits))
            {
                var record = new byte[layout.BytesNeeded];
                layout.WriteBits(record, bits);
                return (record, null);
            }
        }
        catch (OverflowException)
        {
            // Beyond what a decimal holds is beyond any raw number, too.
        }

        return (null, $"{number} is beyond the range of {layout.BitCount} bits");
    }

    /// <summary>
    /// A big-endian number of several bytes begins at the first bit of its bytes; within one byte both orders count
    /// bits alike.
    /// </summary>
    private static SignalLayout Layout(RawForm form, BitRange? bits)
    {
        var range = bits ?? new BitRange(0, form.Type == RawType.YesNo ? 8 : form.Length);
        var type = form.Type switch
        {
            RawType.Signed => SignalType.Signed,
            RawType.Float32 => SignalType.Float32,
            _ => SignalType.Unsigned,
        };
        return form.IsLittleEndian || range.Count <= 8
            ? new SignalLayout(range.First, range.Count, ByteOrder.Little, type)
            : new SignalLayout(range.First + 7, range.Count, ByteOrder.Big, type);
    }

    /// <summary>A marker is a bit pattern, so that 0x8000 and -32768 are the same one of a signed 16-bit value.</summary>
    private static bool IsInvalid(ImmutableArray<long> markers, ulong raw, int bitCount)
    {
        var allOnes = ulong.MaxValue >> (64 - bitCount);
        foreach (var marker in markers)
        {
            if (((ulong)marker & allOnes) == raw) return true;
        }

        return false;
    }
}
