using System.Collections.Immutable;
using System.Text;
using EolSequencer.Model.Devices;
using EolSequencer.Model.Judging;
using EolSequencer.Model.Values;
using EolSequencer.Wire.Can;

namespace EolSequencer.Devices.VehicleBus;

/// <summary>Values from bytes and bytes from values, as a vehicle type describes their form.</summary>
internal static class FormCodec
{
    /// <summary>Reads a value out of a record.</summary>
    /// <param name="bits">Where it lies; null: at the record's beginning.</param>
    /// <returns>The value, or why the bytes hold none.</returns>
    public static (Value? Value, MissingCause? Missing, string? Detail) Decode(RawForm form, BitRange? bits, ReadOnlySpan<byte> record)
    {
        if (form.Type is RawType.Text or RawType.Bytes) return DecodeText(form, bits, record);
        var layout = Layout(form, bits);
        if (record.Length < layout.BytesNeeded) return (null, MissingCause.ShortAnswer, $"short answer ({record.Length} of {layout.BytesNeeded} bytes)");
        var raw = layout.ReadBits(record);
        if (form.Type == RawType.YesNo) return (TruthValue.Of(raw != 0), null, null);
        if (!layout.TryGetRaw(raw, out var number)) return (null, MissingCause.NotFinite, "the value is not finite");
        if (IsInvalid(form.Invalid, number)) return (null, MissingCause.InvalidMarker, $"the unit marks its value as invalid ({NumberText.Of(number)})");
        return (new NumberValue(number * form.Scale + form.Offset, form.Unit, form.Type == RawType.Float32), null, null);
    }

    /// <summary>Makes the bytes of a value; numbers are converted to the form's unit and rounded to its steps.</summary>
    /// <returns>The bytes, or why the form cannot hold the value.</returns>
    public static (byte[]? Record, string? Fault) Encode(RawForm form, Value value)
    {
        if (form.Type == RawType.Text) return EncodeText(form, value.ToString()!);
        if (form.Type == RawType.Bytes) return (Convert.FromHexString(value.ToString()!), null);
        var layout = Layout(form, null);
        var record = new byte[layout.BytesNeeded];
        if (value is TruthValue truth)
        {
            record[^1] = truth.IsTrue ? (byte)1 : (byte)0;
            return (record, null);
        }

        if (value is not NumberValue number || !number.TryIn(form.Unit, out var physical)) return (null, $"{value} has no place in {form.Unit?.Symbol ?? "a count"}");
        if (!layout.TryGetBits((physical - form.Offset) / form.Scale, out var bits)) return (null, $"{value} is beyond the range of {layout.BitCount} bits");
        layout.WriteBits(record, bits);
        return (record, null);
    }

    private static (Value?, MissingCause?, string?) DecodeText(RawForm form, BitRange? bits, ReadOnlySpan<byte> record)
    {
        var from = (bits?.First ?? 0) / 8;
        if (record.Length - from < form.Length) return (null, MissingCause.ShortAnswer, $"short answer ({Math.Max(0, record.Length - from)} of {form.Length} bytes)");
        var field = record.Slice(from, form.Length);
        if (form.Type == RawType.Bytes) return (new TextValue(Convert.ToHexString(field)), null, null);
        field = form.Padding is { } padding ? field.TrimEnd(padding) : field.TrimEnd([(byte)0x00, (byte)0xFF, (byte)0x20]);
        var odd = field.IndexOfAnyExceptInRange((byte)0x20, (byte)0x7E);
        return odd < 0
            ? (new TextValue(Encoding.ASCII.GetString(field)), null, null)
            : (null, MissingCause.InvalidMarker, $"illegal byte {field[odd]:X2} in a text, at position {odd + 1}");
    }

    private static (byte[]?, string?) EncodeText(RawForm form, string text)
    {
        if (text.Length > form.Length || text.AsSpan().ContainsAnyExceptInRange(' ', '~')) return (null, $"'{text}' does not fit into {form.Length} ASCII characters");
        var record = new byte[form.Length];
        record.AsSpan().Fill(form.Padding ?? 0x20);
        Encoding.ASCII.GetBytes(text, record);
        return (record, null);
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

    private static bool IsInvalid(ImmutableArray<long> invalid, decimal raw)
    {
        foreach (var marker in invalid)
        {
            if (marker == raw) return true;
        }

        return false;
    }
}
