using System.Globalization;

namespace EolSequencer.Wire.Modbus;

/// <summary>
/// The numbers of handbooks: a digit for the table, then four or five digits counted from 1. 40001 is address 0 of the
/// holding registers.
/// </summary>
public static class ReferenceNumber
{
    /// <summary>The table and the address on the wire of a number of five or six digits.</summary>
    public static bool TryParse(string text, out RegisterTable table, out ushort address)
    {
        (table, address) = (default, 0);
        if (text.Length is not (5 or 6) || text.AsSpan().ContainsAnyExceptInRange('0', '9') || text[0] is not ('0' or '1' or '3' or '4')) return false;
        var number = int.Parse(text.AsSpan(1), CultureInfo.InvariantCulture);
        if (number is < 1 or > 0x10000) return false;
        (table, address) = ((RegisterTable)(text[0] - '0'), (ushort)(number - 1));
        return true;
    }
}
