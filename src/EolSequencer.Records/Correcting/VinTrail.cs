using EolSequencer.Records.Administration;

namespace EolSequencer.Records.Correcting;

/// <summary>Which numbers speak of one vehicle.</summary>
internal sealed class VinTrail(IRows<VinCorrectionRow> corrections)
{
    /// <summary>The number that a vehicle has by now: over all corrections, in their order.</summary>
    public string Current(string vin)
    {
        // The service lets no circle come to be; a forged table must not hang who reads it.
        var seen = new HashSet<string>(StringComparer.Ordinal) { vin };
        while (corrections.Find(vin) is { Corrected: { } next } && seen.Add(next)) vin = next;
        return vin;
    }

    /// <summary>Every number under which something of a vehicle may be recorded, the current one first.</summary>
    /// <param name="vin">Any of them.</param>
    public IReadOnlyList<string> All(string vin)
    {
        var all = new List<string> { Current(vin) };
        for (var at = 0; at < all.Count; at++) all.AddRange(corrections.Where("corrected", all[at]).Select(row => row.Vin).Where(wrong => !all.Contains(wrong)));
        return all;
    }

    /// <summary>What led from wrong numbers to the current one.</summary>
    public IEnumerable<VinCorrection> Corrections(string vin) =>
        All(vin).Skip(1).Select(wrong => corrections.Find(wrong)).OfType<VinCorrectionRow>().Where(row => row.Corrected is not null).Select(VinCorrection.Of);
}
