using System.Collections.Immutable;
using EolSequencer.Rehearsal.Tests.WholeSystem.Storage;

namespace EolSequencer.Rehearsal.Tests.WholeSystem.Stories;

/// <summary>What happens while one vehicle is on the station.</summary>
/// <param name="Order">Which of the demo orders.</param>
/// <param name="Seed">Of the simulated vehicle and its operator.</param>
/// <param name="Faults">What is wrong with vehicle, operator, bus and instruments, some of it from a moment on.</param>
/// <param name="Stop">When somebody stops the run; null: nobody does.</param>
/// <param name="ClockSteps">When the wall clock is set, and by how much.</param>
/// <param name="Disk">What goes wrong with the disk, counted from the beginning of this vehicle; null: nothing new.</param>
/// <param name="RestartsBefore">True: the program is started anew before it.</param>
internal sealed record VehicleStory(
    int Order, ulong Seed, ImmutableArray<string> Faults, TimeSpan? Stop, ImmutableArray<(TimeSpan At, TimeSpan By)> ClockSteps, DiskTrouble? Disk, bool RestartsBefore)
{
    public override string ToString()
    {
        var parts = new List<string> { $"order {Order}, seed {Seed}" };
        if (RestartsBefore) parts.Insert(0, "program started anew");
        parts.AddRange(Faults);
        if (Stop is { } stop) parts.Add($"stopped at {stop.TotalSeconds:0.###} s");
        parts.AddRange(ClockSteps.Select(step => $"clock set by {step.By} at {step.At.TotalSeconds:0.###} s"));
        if (Disk is not null) parts.Add(Disk.ToString());
        return string.Join("; ", parts);
    }
}
