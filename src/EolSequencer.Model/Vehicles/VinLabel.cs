namespace EolSequencer.Model.Vehicles;

/// <summary>What stands on a label around the number.</summary>
public static class VinLabel
{
    /// <summary>Drops the data identifier <c>I</c> in front of 17 characters; anything else stays as it is.</summary>
    /// <param name="scanned">The text of the scanner without its terminator.</param>
    /// <remarks>Source: SAE J1877 and ANSI MH10.8.2, data identifier I. No other letter is dropped and none elsewhere.</remarks>
    public static string Strip(string scanned) => scanned is ['I', .. { Length: Vin.Length } number] ? number : scanned;
}
