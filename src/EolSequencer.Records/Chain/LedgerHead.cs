namespace EolSequencer.Records.Chain;

/// <summary>
/// Where the ledger stands. Kept outside the data folder – printed, or with another computer – it shows later that nothing
/// was cut off its end.
/// </summary>
/// <param name="Count">Number of entries.</param>
/// <param name="Hash">Link of the last one, hex, lower case; zeros when there is none.</param>
public sealed record LedgerHead(long Count, string Hash)
{
    /// <summary>For paper: the number of entries and the first 128 bits of the link in groups of four.</summary>
    public string Fingerprint =>
        string.Create(System.Globalization.CultureInfo.InvariantCulture, $"{Count} ") + string.Join('-', Hash[..32].ToUpperInvariant().Chunk(4).Select(four => new string(four)));
}
