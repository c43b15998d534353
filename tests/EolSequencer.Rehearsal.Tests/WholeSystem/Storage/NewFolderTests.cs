using EolSequencer.Records;
using EolSequencer.Simulators.Randomness;

namespace EolSequencer.Rehearsal.Tests.WholeSystem.Storage;

/// <summary>The very first start makes the record; whatever breaks it off, the next start makes it whole.</summary>
public sealed class NewFolderTests
{
    [Fact]
    public void Wherever_the_power_is_lost_the_next_start_has_a_whole_record() => Try(before => new DiskTrouble.PowerLoss(before));

    [Fact]
    public void Wherever_the_program_is_killed_the_next_start_has_a_whole_record() => Try(before => new DiskTrouble.Killed(before));

    [Fact]
    public void Wherever_the_disk_fails_it_is_told_and_the_next_start_has_a_whole_record() => Try(before => new DiskTrouble.Failing(before, 1));

    [Fact]
    public void Wherever_the_disk_fills_it_is_told_and_the_next_start_has_a_whole_record() => Try(before => new DiskTrouble.Full(2000L * before));

    private static void Try(Func<int, DiskTrouble> trouble)
    {
        var refused = 0;
        for (var before = 1; ; before++)
        {
            using var first = new QuickFolder();
            using var second = new QuickFolder();
            using var disk = new SimulatedDisk(first.Path);
            disk.Expect(trouble(before));
            if (DataFolder.Open(first.Path, TimeProvider.System) is FolderResult<DataFolder>.Refused) refused++;
            if (disk.Refused == 0) break;

            foreach (var key in Directory.GetFiles(first.Path, "*.pem")) File.Copy(key, Path.Combine(second.Path, Path.GetFileName(key)));
            disk.CopyWhatIsLeft(second.Path, new RandomStream((ulong)before, "disk"));
            var opened = DataFolder.Open(second.Path, TimeProvider.System);
            var folder = Assert.IsType<FolderResult<DataFolder>.Opened>(opened).Folder;
            Assert.Empty(folder.Record.Verify().Findings.Select(finding => $"{trouble(before)}: {finding}"));
        }

        Assert.True(refused > 3, $"it was refused {refused} times");
    }
}
