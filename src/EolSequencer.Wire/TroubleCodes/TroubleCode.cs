using System.Globalization;

namespace EolSequencer.Wire.TroubleCodes;

/// <summary>A diagnostic trouble code of two bytes, as emissions services give it, or of three with a failure type.</summary>
/// <param name="Base">The two upper bytes: system, and four digits of which the last three are hexadecimal.</param>
/// <param name="FailureType">The third byte; null for a code of two bytes.</param>
/// <remarks>
/// Source: SAE J2012 and ISO 15031-6. Bits 15 and 14 name the system (P powertrain, C chassis, B body, U network),
/// bits 13 and 12 the first digit. What the third byte means depends on the format identifier that the control unit
/// gives with its codes; here it is kept and shown, never judged.
/// </remarks>
public readonly record struct TroubleCode(ushort Base, byte? FailureType = null)
{
    private const string Systems = "PCBU";

    /// <summary>The code without its failure type: <c>P0301</c>.</summary>
    public string BaseText => $"{Systems[Base >> 14]}{(Base & 0x3FFF).ToString("X4", CultureInfo.InvariantCulture)}";

    /// <summary>True for two zero bytes, which fill lists up and are no code.</summary>
    public bool IsFiller => Base == 0 && FailureType is null or 0;

    /// <summary>Two bytes.</summary>
    internal static TroubleCode ReadTwo(ReadOnlySpan<byte> bytes) => new((ushort)((bytes[0] << 8) | bytes[1]));

    /// <summary>Three bytes.</summary>
    internal static TroubleCode ReadThree(ReadOnlySpan<byte> bytes) => ReadTwo(bytes) with { FailureType = bytes[2] };

    /// <summary>The bytes, two or three of them.</summary>
    internal void Write(Span<byte> bytes)
    {
        bytes[0] = (byte)(Base >> 8);
        bytes[1] = (byte)Base;
        if (FailureType is { } type)
        {
            bytes[2] = type;
        }
    }

    /// <summary>Reads the form that <see cref="ToString"/> writes.</summary>
    public static bool TryParse(ReadOnlySpan<char> text, out TroubleCode code)
    {
        code = default;
        if (text.Length is not (5 or 8) || Systems.IndexOf(text[0], StringComparison.Ordinal) is not (>= 0 and var system) ||
            !TryHex(text[1..5], out var digits) || digits > 0x3FFF)
        {
            return false;
        }

        code = new TroubleCode((ushort)((system << 14) | digits));
        if (text.Length == 5)
        {
            return true;
        }

        if (text[5] != '-' || !TryHex(text[6..], out var type))
        {
            return false;
        }

        code = code with { FailureType = (byte)type };
        return true;
    }

    /// <summary><c>P0301</c>, or with a third byte <c>P0127-00</c>.</summary>
    public override string ToString() => FailureType is { } type
        ? $"{BaseText}-{type.ToString("X2", CultureInfo.InvariantCulture)}"
        : BaseText;

    private static bool TryHex(ReadOnlySpan<char> text, out int value) =>
        int.TryParse(text, NumberStyles.AllowHexSpecifier, CultureInfo.InvariantCulture, out value);
}
