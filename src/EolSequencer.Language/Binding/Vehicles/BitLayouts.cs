using System.Collections.Immutable;
using System.Globalization;
using EolSequencer.Language.Binding.Values;
using EolSequencer.Language.Diagnostics;
using EolSequencer.Language.Syntax;
using EolSequencer.Language.Yaml;
using EolSequencer.Model.Devices;

namespace EolSequencer.Language.Binding.Vehicles;

/// <summary>Reads <c>bit: 3</c>, <c>bits: 4+4</c> and <c>bits: { fl: 0+16, fr: 16+16 }</c>.</summary>
internal static class BitLayouts
{
    private const int MostBits = 32;

    private static readonly ValueForm RangeForm = new ValueForm.Text(@"^\s*[0-9]+\s*(?:\+\s*[0-9]+\s*)?$", Subject.None);

    /// <summary>The keys it reads.</summary>
    public static MapKey[] Keys { get; } =
    [
        new("bit", RangeForm, "the one bit; bit n is bit n mod 8 of byte n div 8, 0 the least significant"),
        new("bits", Forms.Either(RangeForm, Forms.Names(Ids.IndexForm, RangeForm)), "FIRST+COUNT, or a map of names to it: then the channel has an index"),
    ];

    /// <summary>The layout; null: already reported.</summary>
    /// <param name="mostBit">Number of the last bit there is.</param>
    public static BitLayout? Read(MapReader keys, int mostBit)
    {
        if (keys.Has("bit") && keys.ExactlyOne(["bit", "bits"], "place of bits") is null) return null;
        if (!keys.Has("bit") && !keys.Has("bits")) return BitLayout.Whole;
        if (keys.Find(keys.Has("bit") ? "bit" : "bits") is not { } node) return null;

        var layout = node is YamlMap map ? ByName(map, mostBit, keys.Report) : Single(node, mostBit, keys.Report);
        return layout is not null && IsReadable(layout, keys) ? layout : null;
    }

    private static BitLayout? Single(YamlNode node, int mostBit, Report report) => Range(node, mostBit, report) is { } range
        ? BitLayout.Whole with { Bits = BitLayout.Whole.Bits.Add("", range), Count = range.Count }
        : null;

    private static BitLayout? ByName(YamlMap map, int mostBit, Report report)
    {
        var bits = BitLayout.Whole.Bits.ToBuilder();
        var names = ImmutableArray.CreateBuilder<string>(map.Entries.Count);
        foreach (var (key, value) in map.Entries)
        {
            if (Ids.IndexValue(key, "an index", report) is not { } name || Range(value, mostBit, report) is not { } range) continue;
            bits[name] = range;
            names.Add(name);
            if (range.Count == bits[names[0]].Count) continue;
            report.Add(VehicleCodes.BitsDiffer, value.Place, $"'{name}' has {Text(range.Count)} bits, '{names[0]}' has {Text(bits[names[0]].Count)}");
            return null;
        }

        return names.Count == 0 ? null : new BitLayout(bits.ToImmutable(), names.ToImmutable(), bits[names[0]].Count);
    }

    private static BitRange? Range(YamlNode node, int mostBit, Report report)
    {
        if (node.AsText("a range of bits", report) is not { } text) return null;
        var plus = text.Text.IndexOf('+');
        var first = plus < 0 ? text.Text : text.Text[..plus];
        var count = plus < 0 ? "1" : text.Text[(plus + 1)..];
        if (TryRead(first, out var start) && TryRead(count, out var length) && length is > 0 and <= MostBits && start + length - 1 <= mostBit) return new BitRange(start, length);

        report.Add(VehicleCodes.BadBits, text.Place, $"{Shown.Quoted(text.Text)} are no bits between 0 and {Text(mostBit)}, {Text(MostBits)} at most");
        return null;
    }

    // ISO 11898 frames carry bytes; a field across bytes in big order has one meaning only when it fills them.
    private static bool IsReadable(BitLayout layout, MapReader keys)
    {
        if (keys.Text("byte-order") is { Text: "little" }) return true;
        foreach (var (name, range) in layout.Bits)
        {
            var isWithinByte = range.First % 8 + range.Count <= 8;
            var fillsBytes = range.First % 8 == 0 && range.Count % 8 == 0;
            if (isWithinByte || fillsBytes) continue;
            keys.Report.Add(VehicleCodes.BitsCross, keys.PlaceOf("bits"), $"{(name.Length == 0 ? "the field" : $"'{name}'")} begins at bit {Text(range.First)} and has {Text(range.Count)} bits");
            return false;
        }

        return true;
    }

    private static bool TryRead(string digits, out int number) => int.TryParse(digits.Trim(), NumberStyles.None, CultureInfo.InvariantCulture, out number);

    private static string Text(int number) => number.ToString(CultureInfo.InvariantCulture);
}
