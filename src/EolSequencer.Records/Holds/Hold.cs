using EolSequencer.Records.Canonical;

namespace EolSequencer.Records.Holds;

/// <summary>A containment: vehicles that are kept back.</summary>
/// <param name="Matched">How many vehicles matched when it was placed.</param>
/// <param name="Lifted">Why it was lifted; null: it holds.</param>
public sealed record Hold(string Id, string Reason, HoldQuery Query, int Matched, string? Lifted)
{
    internal static Hold Of(HoldRow row) => new(row.Id, row.Placed.Reason, QueryOf(row), row.Placed.Matched, row.Lifted);

    internal static HoldQuery QueryOf(HoldRow row)
    {
        var placed = row.Placed;
        return new HoldQuery(placed.Vins, placed.Fact, placed.Value, Read(placed.From), Read(placed.Until), placed.Station, placed.Instrument, placed.Program);
    }

    private static DateTimeOffset? Read(string? text) => text is null ? null : UtcText.Read(text);
}
