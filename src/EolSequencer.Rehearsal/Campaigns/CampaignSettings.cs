using System.Globalization;

namespace EolSequencer.Rehearsal.Campaigns;

/// <summary>How far a campaign goes.</summary>
/// <param name="Seeds">How often each good vehicle is run, each time with another seed.</param>
/// <param name="FirstSeed">The seed of the first run of a good vehicle, and of every run with a fault.</param>
/// <param name="EveryVehicle">True: each fault on every combination that can have it; false: on those that show every two option values together.</param>
/// <param name="Pairs">True: also with two faults at a time.</param>
public sealed record CampaignSettings(int Seeds, ulong FirstSeed, bool EveryVehicle, bool Pairs)
{
    /// <summary>In one line; equal settings have equal texts.</summary>
    public string Text => string.Create(
        CultureInfo.InvariantCulture, $"seeds {Seeds} from {FirstSeed}, faults on {(EveryVehicle ? "every combination" : "a cover of option pairs")}{(Pairs ? ", pairs of faults" : "")}");
}
