using System.Collections.Immutable;
using EolSequencer.Language.Diagnostics;
using EolSequencer.Language.Expectations;
using EolSequencer.Language.Syntax;
using EolSequencer.Model.Devices;
using EolSequencer.Model.Units;
using EolSequencer.Model.Values;

namespace EolSequencer.Language.Binding.Vehicles;

/// <summary>Reads how a value lies in bytes: type, scale, offset, invalid values, padding, byte order.</summary>
internal static class RawForms
{
    private static readonly Words<bool> ByteOrders = new(("big", false), ("little", true));

    /// <summary>The keys it reads beside the type's own.</summary>
    public static MapKey[] Keys { get; } =
    [
        new("scale", Forms.Quantity, "value = raw × scale + offset; its unit is the channel's"),
        new("offset", Forms.Quantity, "in the unit of 'scale'"),
        new("invalid", Forms.OneOrMore(Forms.Whole(-(1L << 31), (1L << 32) - 1)), "raw values that mean no value"),
        new("padding", Forms.Whole(0, 0xFF), "byte that fills a short text at its end; removed before it is compared"),
        new("byte-order", Forms.Word(ByteOrders), "of values across bytes; big if nothing is said"),
    ];

    /// <summary>The form; null: already reported.</summary>
    /// <param name="typeKey">The key that holds the type: <c>as</c>, <c>to</c> or <c>returns</c>.</param>
    /// <param name="bits">How many bits the source gives; then the type may be left out and is an unsigned number.</param>
    public static RawValue? Read(MapReader keys, string typeKey, int? bits)
    {
        var raw = (RawType.Unsigned, bits ?? 0);
        if (keys.Has(typeKey))
        {
            if (keys.Text(typeKey) is not { } word || RawTypes.Read(word, $"'{typeKey}'", bits, keys.Report) is not { } read) return null;
            raw = read;
        }
        else if (bits is null)
        {
            keys.Report.Add(SyntaxCodes.MissingKey, keys.Place, $"the raw type is not said", $"add  {typeKey}: uint8  or another type");
            return null;
        }

        return Read(keys, raw.Item1, raw.Item2);
    }

    private static RawValue? Read(MapReader keys, RawType type, int length)
    {
        var isNumber = type is RawType.Unsigned or RawType.Signed or RawType.Float32;
        if (!isNumber && (keys.Has("scale") || keys.Has("offset")))
        {
            keys.Report.Add(VehicleCodes.ScaleOfNoNumber, keys.PlaceOf(keys.Has("scale") ? "scale" : "offset"), "only a number is scaled");
            return null;
        }

        var scale = keys.Find("scale") is { } factor ? QuantityParser.ParseWritten(factor, keys.Report) : new NumberValue(1, null);
        var offset = keys.Find("offset") is { } shift ? QuantityParser.ParseWritten(shift, keys.Report) : new NumberValue(0, scale?.Unit);
        if (scale is null || offset is null || !Fit(scale, offset, keys)) return null;

        var form = new RawForm
        {
            Type = type,
            Length = length,
            Scale = scale.Number,
            Offset = offset.Number,
            Unit = scale.Unit,
            Invalid = Invalid(keys, type, length),
            Padding = (byte?)keys.Whole("padding"),
            IsLittleEndian = keys.Word("byte-order", ByteOrders) ?? false,
        };
        return new RawValue(form, ShapeOf(type, length, scale.Unit));
    }

    private static bool Fit(NumberValue scale, NumberValue offset, MapReader keys)
    {
        if (scale.Number == 0)
        {
            keys.Report.Add(VehicleCodes.ZeroScale, keys.PlaceOf("scale"), "every raw value would become the same");
            return false;
        }

        if (scale.Unit == offset.Unit) return true;
        keys.Report.Add(VehicleCodes.OffsetUnit, keys.PlaceOf("offset"), $"the scale is in {scale.Unit?.Symbol ?? "no unit"}, the offset in {offset.Unit?.Symbol ?? "no unit"}");
        return false;
    }

    private static ValueShape ShapeOf(RawType type, int length, Unit? unit) => type switch
    {
        RawType.YesNo => ValueShape.Truth,
        RawType.Text => ValueShape.Text(length),
        RawType.Bytes => ValueShape.Text(length * 2),
        _ => ValueShape.Number(unit),
    };

    private static ImmutableArray<long> Invalid(MapReader keys, RawType type, int length)
    {
        var bits = type is RawType.Text or RawType.Bytes ? 8 : Math.Min(length, 32);
        var most = (1L << bits) - 1;
        var least = type == RawType.Signed ? -(1L << (bits - 1)) : 0;
        return
        [
            .. keys.OneOrMore("invalid")
                .Select(item => item.AsWhole("'invalid'", least, most, keys.Report))
                .OfType<long>()
                .Select(raw => type == RawType.Signed && raw >= 1L << (bits - 1) ? raw - (1L << bits) : raw),
        ];
    }
}
