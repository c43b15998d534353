namespace EolSequencer.Wire.Modbus;

/// <summary>Names of byte orders, spelled as byte letters only: other names mean different things to different people.</summary>
public static class WordOrders
{
    private const string Letters = "ABCDEFGH";

    /// <summary>The name for a number of some bytes, such as <c>CDAB</c>.</summary>
    /// <param name="bytes">2, 4 or 8.</param>
    public static string Name(this WordOrder order, int bytes)
    {
        Span<byte> places = stackalloc byte[bytes];
        for (var i = 0; i < bytes; i++) places[i] = (byte)Letters[i];
        Arrange(places, order);
        return System.Text.Encoding.ASCII.GetString(places);
    }

    /// <summary>The names that a number of some bytes can have, the usual one first.</summary>
    public static IEnumerable<string> Names(int bytes) => Enum.GetValues<WordOrder>().Select(order => order.Name(bytes)).Distinct();

    /// <summary>The order of a name.</summary>
    public static bool TryParse(string name, int bytes, out WordOrder order)
    {
        foreach (var candidate in Enum.GetValues<WordOrder>())
        {
            order = candidate;
            if (candidate.Name(bytes) == name) return true;
        }

        order = default;
        return false;
    }

    /// <summary>Brings the bytes of a number from the order ABCD into another one, or back: it is its own inverse.</summary>
    /// <param name="number">2, 4 or 8 bytes.</param>
    public static void Arrange(Span<byte> number, WordOrder order)
    {
        if (order is WordOrder.Cdab or WordOrder.Dcba) number.Reverse();

        // Turning all bytes around turns those within a register around too.
        if (order is WordOrder.Cdab or WordOrder.Badc)
        {
            for (var i = 0; i + 1 < number.Length; i += 2) (number[i], number[i + 1]) = (number[i + 1], number[i]);
        }
    }
}
