using EolSequencer.Records.Administration;

namespace EolSequencer.Records.Correcting;

/// <summary>What an act makes of the numbers of vehicles.</summary>
internal static class VinFold
{
    public static void Apply(Act act, string? by, IRows<VinCorrectionRow> corrections)
    {
        if (act is not VinCorrected corrected) return;
        if (corrections.Find(corrected.To) is { } back && back.Corrected == corrected.From) corrections.Put(back.Vin, new VinCorrectionRow(back.Vin, corrected.Reason, null, by));
        else corrections.Put(corrected.From, new VinCorrectionRow(corrected.From, corrected.Reason, corrected.To, by));
    }
}
