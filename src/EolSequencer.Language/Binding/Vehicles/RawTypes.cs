using System.Globalization;
using EolSequencer.Language.Binding.Values;
using EolSequencer.Language.Diagnostics;
using EolSequencer.Language.Syntax;
using EolSequencer.Language.Yaml;
using EolSequencer.Model.Devices;

namespace EolSequencer.Language.Binding.Vehicles;

/// <summary>Reads raw types: <c>uint16</c>, <c>int8</c>, <c>float32</c>, <c>yes-no</c>, <c>text(17)</c>, <c>bytes(4)</c>.</summary>
internal static class RawTypes
{
    private const int MostBits = 32;

    private static readonly string[] Words = ["yes-no", "uint8", "uint16", "uint24", "uint32", "int8", "int16", "int32", "float32", "text(n)", "bytes(n)"];

    /// <summary>What a raw type looks like.</summary>
    public static ValueForm Form { get; } = new ValueForm.Text(
        @"^(?:yes-no|float32|u?int0*(?:[1-9]|[12][0-9]|3[0-2])|(?:text|bytes)\(\s*0*(?:[1-9]|[1-9][0-9]|1[0-9][0-9]|2[0-4][0-9]|25[0-5])\s*\))$", Subject.None);

    /// <summary>Type and length (bits of numbers and truth values, bytes of texts); null: already reported.</summary>
    /// <param name="bits">How many bits the source gives; null when the type alone says it.</param>
    public static (RawType Type, int Length)? Read(YamlScalar word, string what, int? bits, Report report)
    {
        if (Parse(word.Text, bits) is not { } type)
        {
            Shapes.ReportUnknown(word, what, Words, report);
            return null;
        }

        var isText = type.Type is RawType.Text or RawType.Bytes;
        if (type.Length == 0)
        {
            report.Add(ShapeCodes.BadLength, word.Place, $"{Shown.Quoted(word.Text)} has a length that cannot be");
            return null;
        }

        if (bits is { } given && (isText || given != type.Length))
        {
            report.Add(VehicleCodes.BitsDiffer, word.Place, $"'{word.Text}' does not fit {given.ToString(CultureInfo.InvariantCulture)} bits");
            return null;
        }

        if (bits is null && !isText && type.Length % 8 != 0)
        {
            report.Add(VehicleCodes.RawType, word.Place, $"'{word.Text}' is not a whole number of bytes", "add  bits  that say where it lies");
            return null;
        }

        return type;
    }

    private static (RawType Type, int Length)? Parse(string word, int? bits) => word switch
    {
        "yes-no" => (RawType.YesNo, bits ?? 8),
        "float32" => (RawType.Float32, 32),
        _ when Shapes.LengthOf(word, "text") is { } length => (RawType.Text, length),
        _ when Shapes.LengthOf(word, "bytes") is { } length => (RawType.Bytes, length),
        _ when BitsOf(word, "uint") is { } count => (RawType.Unsigned, count),
        _ when BitsOf(word, "int") is { } count => (RawType.Signed, count),
        _ => null,
    };

    private static int? BitsOf(string word, string name)
    {
        if (!word.StartsWith(name, StringComparison.Ordinal)) return null;
        return int.TryParse(word.AsSpan(name.Length), NumberStyles.None, CultureInfo.InvariantCulture, out var bits) && bits is > 0 and <= MostBits ? bits : null;
    }
}
