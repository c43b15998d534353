using System.Collections.Immutable;
using System.Globalization;

namespace EolSequencer.Rehearsal.Tests.WholeSystem.Stories;

/// <summary>Some vehicles, one after the other, and everything that goes wrong meanwhile. Its last vehicle meets no trouble of the disk.</summary>
internal sealed record Story(ulong Seed, ImmutableArray<VehicleStory> Vehicles)
{
    public override string ToString() =>
        string.Create(CultureInfo.InvariantCulture, $"seed {Seed}\n{string.Join('\n', Vehicles.Select((vehicle, number) => $"  vehicle {number + 1}: {vehicle}"))}");
}
