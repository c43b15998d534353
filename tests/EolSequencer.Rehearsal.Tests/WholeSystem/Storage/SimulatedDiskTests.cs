using EolSequencer.Records;
using EolSequencer.Rehearsal.Tests.WholeSystem.Invariants;
using EolSequencer.Rehearsal.Tests.WholeSystem.Stories;

namespace EolSequencer.Rehearsal.Tests.WholeSystem.Storage;

/// <summary>The disk takes away what it may and nothing else, and the record stands it wherever it happens.</summary>
public sealed class SimulatedDiskTests
{
    /// <summary>Operations of the disk between two moments that are tried; a prime, so that all parts of a transaction have their turn.</summary>
    private const int Apart = 7;

    private static readonly VehicleStory Quiet = new(0, 1, [], null, [], null, false);

    [Fact]
    public void A_vehicle_takes_some_hundred_operations() => Assert.InRange(OperationsOfAVehicle(), 200, 1000);

    [Fact]
    public void Wherever_the_power_is_lost_nothing_reported_is() => Try(before => new DiskTrouble.PowerLoss(before));

    [Fact]
    public void Wherever_the_program_is_killed_nothing_reported_is_lost() => Try(before => new DiskTrouble.Killed(before));

    [Fact]
    public void Wherever_the_disk_fails_nothing_reported_is_lost() => Try(before => new DiskTrouble.Failing(before, 1));

    [Fact]
    public void Wherever_the_disk_fills_nothing_reported_is_lost() => Try(before => new DiskTrouble.Full(before * 1000L));

    /// <summary>Without the sync that a durable journal waits for, a power loss takes what was reported: the disk does take it.</summary>
    [Fact]
    public void A_disk_that_confirms_what_it_has_not_kept_is_found_out()
    {
        var found = Enumerable.Range(1, 20).SelectMany(number => BreachesOf(new DiskTrouble.PowerLoss(20 * number), number, diskLies: true)).ToList();

        Assert.Contains(found, breach => breach.StartsWith("what was reported is kept: ", StringComparison.Ordinal));
    }

    [Fact]
    public void A_power_loss_takes_some_of_what_was_not_synced_and_cuts_some()
    {
        var kept = new HashSet<int>();
        for (ulong seed = 1; seed <= 200; seed++)
        {
            var file = new DiskFile([1, 1]);
            file.Write(2, [2, 2]);
            file.Sync();
            file.Write(4, [3, 3, 3, 3]);
            var left = file.AfterPowerLoss(new Simulators.Randomness.RandomStream(seed, "disk"));
            Assert.Equal([1, 1, 2, 2], left[..4]);
            kept.Add(left.Length);
        }

        Assert.Equal([4, 5, 6, 7, 8], kept.Order());
    }

    private static void Try(Func<int, DiskTrouble> trouble)
    {
        var operations = OperationsOfAVehicle() + 20;
        for (var before = 1; before <= operations; before += Apart)
        {
            var breaches = BreachesOf(trouble(before), before, diskLies: false);
            Assert.True(breaches.Count == 0, $"{trouble(before)}\n{string.Join('\n', breaches)}");
        }
    }

    private static IReadOnlyList<string> BreachesOf(DiskTrouble trouble, int seed, bool diskLies)
    {
        try
        {
            return Invariant.BreachesOf(StoryPlayer.Play(new Story((ulong)seed, [Quiet with { Disk = trouble }, Quiet with { RestartsBefore = true }]), diskLies));
        }
        catch (Exception fault) when (diskLies && fault is RecordFault or Xunit.Sdk.XunitException)
        {
            return [fault.Message];
        }
    }

    private static int OperationsOfAVehicle()
    {
        var operations = 0;
        StoryPlayer.Play(new Story(1, [Quiet]), look: disk => operations = disk.Operations);
        return operations;
    }
}
