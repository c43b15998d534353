using EolSequencer.Language.Diagnostics;
using EolSequencer.Language.Syntax;
using EolSequencer.Language.Yaml;
using EolSequencer.Model.Devices;
using EolSequencer.Model.Values;

namespace EolSequencer.Language.Binding.Vehicles;

/// <summary>Reads channels that are a whole service of a control unit.</summary>
internal static class ServiceWords
{
    private static readonly Words<ServiceRead> Services = new(("stored-trouble-codes", ServiceRead.StoredTroubleCodes), ("presence", ServiceRead.Presence));

    /// <summary>Status bits of a trouble code.</summary>
    /// <remarks>Source: ISO 14229-1 annex D.2.</remarks>
    private static readonly Words<byte> StatusBits = new(
        ("test-failed", 0x01),
        ("test-failed-this-cycle", 0x02),
        ("pending", 0x04),
        ("confirmed", 0x08),
        ("not-completed-since-clear", 0x10),
        ("failed-since-clear", 0x20),
        ("not-completed-this-cycle", 0x40),
        ("warning-indicator", 0x80));

    /// <summary>The keys it reads: the service, and what is asked of it.</summary>
    public static MapKey Service { get; } = new("service", Forms.Word(Services), "a whole service of the control unit");

    public static MapKey[] Keys { get; } =
    [
        new("mask", Forms.OneOrMore(Forms.Either(Forms.Word(StatusBits), Forms.Whole(1, 0xFF))), "status bits of the trouble codes asked for (ISO 14229-1 D.2)"),
        new("as", Forms.Word("list", "yes-no"), "type of the value: list of trouble codes, yes-no of presence"),
    ];

    /// <summary>The service, its type and the status bits asked for; null: already reported.</summary>
    public static (ServiceRead Kind, ValueShape Shape, byte Mask)? Read(MapReader keys)
    {
        if (keys.Word("service", Services) is not { } kind) return null;
        var shape = kind == ServiceRead.StoredTroubleCodes ? ValueShape.List : ValueShape.Truth;
        var word = kind == ServiceRead.StoredTroubleCodes ? "list" : "yes-no";
        if (keys.Has("as") && keys.Find("as")?.AsOneOf("'as'", [word], keys.Report) is null) return null;
        if (kind == ServiceRead.StoredTroubleCodes) return Mask(keys) is { } mask ? (kind, shape, mask) : null;
        if (!keys.Has("mask")) return (kind, shape, 0);

        keys.Report.Add(SyntaxCodes.UnknownKey, keys.PlaceOf("mask"), "only trouble codes have a mask", "leave it out");
        return null;
    }

    private static byte? Mask(MapReader keys)
    {
        if (!keys.Has("mask"))
        {
            keys.Report.Add(SyntaxCodes.MissingKey, keys.Place, "it is not said which trouble codes are meant", "add  mask: confirmed  or other status bits");
            return null;
        }

        byte mask = 0;
        foreach (var item in keys.OneOrMore("mask"))
        {
            var isNumber = item is YamlScalar { Text: ['0', 'x', ..] };
            var bits = isNumber ? (byte?)item.AsWhole("'mask'", 1, 0xFF, keys.Report) : item.AsWord("'mask'", StatusBits, keys.Report);
            if (bits is null) return null;
            mask |= bits.Value;
        }

        return mask == 0 ? null : mask;
    }
}
