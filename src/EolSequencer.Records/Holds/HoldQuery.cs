using System.Collections.Immutable;

namespace EolSequencer.Records.Holds;

/// <summary>Which vehicles are held: those with a run that counts for which all that is said here is true. What is null is not asked.</summary>
/// <param name="Vins">Only these vehicles; empty: any.</param>
/// <param name="Fact">Name of an order fact or option, such as a part lot, or of a part with a serial.</param>
/// <param name="Value">Its value as text, or one of a list; of a part, the serial that is on the vehicle now.</param>
/// <param name="From">Run begun at this moment or later, UTC.</param>
/// <param name="Until">Run begun before this moment, UTC.</param>
/// <param name="Station">Id of the station.</param>
/// <param name="Instrument">Identity of an instrument in use.</param>
/// <param name="Program">Version of the station's program.</param>
public sealed record HoldQuery(
    ImmutableArray<string> Vins, string? Fact = null, string? Value = null, DateTimeOffset? From = null, DateTimeOffset? Until = null,
    string? Station = null, string? Instrument = null, string? Program = null)
{
    /// <summary>True when nothing is asked, so that every vehicle would be held.</summary>
    public bool AsksNothing => Vins.IsEmpty && Fact is null && From is null && Until is null && Station is null && Instrument is null && Program is null;
}
