using System.Collections.Immutable;
using EolSequencer.Records;
using EolSequencer.Records.Stations;
using EolSequencer.Records.Verify;
using EolSequencer.Rehearsal.Tests.Kit;
using EolSequencer.Rehearsal.Tests.WholeSystem.Storage;
using EolSequencer.Simulators.Randomness;
using TakenStation = EolSequencer.Records.Stations.StationResult;

namespace EolSequencer.Rehearsal.Tests.WholeSystem.Stories;

/// <summary>Lets a story happen: one vehicle after the other on a simulated disk, with new starts of the program where there is a reason.</summary>
internal sealed class StoryPlayer : IDisposable
{
    private const string Station = "startup_1";
    private static readonly DateTimeOffset Start = new(2026, 11, 25, 6, 0, 0, TimeSpan.Zero);
    private static readonly Lazy<(string Name, byte[] Bytes)[]> NewFolder = new(MakeNewFolder);

    private readonly QuickFolder _root = new();
    private readonly List<TestedVehicle> _vehicles = [];
    private readonly List<VerifyReport> _openings = [];
    private readonly RandomStream _chance;
    private readonly bool _diskLies;
    private SimulatedDisk _disk;
    private StationHold? _station;
    private DateTimeOffset _wall = Start;
    private int _folders;

    /// <param name="diskLies">True: on disks that confirm what they have not kept.</param>
    private StoryPlayer(ulong seed, bool diskLies)
    {
        (_chance, _diskLies) = (new RandomStream(seed, "disk"), diskLies);
        var folder = NextFolder();
        foreach (var (name, bytes) in NewFolder.Value) File.WriteAllBytes(Path.Combine(folder, name), bytes);
        _disk = new SimulatedDisk(folder) { Lies = diskLies };
    }

    /// <summary>Plays a story to its end and reads what has come of it.</summary>
    /// <param name="look">Sees the disk at the end, before it goes.</param>
    public static PlayedStory Play(Story story, bool diskLies = false, Action<SimulatedDisk>? look = null)
    {
        using var player = new StoryPlayer(story.Seed, diskLies);
        foreach (var vehicle in story.Vehicles) player.Test(vehicle);
        player.End();
        look?.Invoke(player._disk);
        return player.Read(story);
    }

    public void Dispose()
    {
        End();
        _disk.Dispose();
        _root.Dispose();
    }

    private void Test(VehicleStory story)
    {
        if (story.RestartsBefore) End();
        _disk.Expect(null);
        _station ??= Begin();
        _disk.Expect(story.Disk);
        var tested = SystemRun.Run(story, _station.BeginRun(), _wall);
        _vehicles.Add(tested with { Crashed = _disk.IsGone });
        _wall = tested.WallAt(tested.Took) + TimeSpan.FromMinutes(1);
        if (_disk.IsGone) End();
    }

    private StationHold Begin()
    {
        var folder = Assert.IsType<FolderResult<DataFolder>.Opened>(DataFolder.Open(_disk.Folder, TimeProvider.System)).Folder;
        _openings.Add(folder.Record.VerifyTail());
        return Assert.IsType<TakenStation.Taken>(folder.TakeStation(Station)).Station;
    }

    /// <summary>The program ends; a disk that is gone is replaced by what is left of it.</summary>
    private void End()
    {
        _station?.Dispose();
        _station = null;
        if (!_disk.IsGone) return;
        var folder = NextFolder();
        File.Copy(Path.Combine(_disk.Folder, "station-key.pem"), Path.Combine(folder, "station-key.pem"));
        _disk.CopyWhatIsLeft(folder, _chance);
        _disk.Dispose();
        _disk = new SimulatedDisk(folder) { Lies = _diskLies };
    }

    private PlayedStory Read(Story story)
    {
        var record = Assert.IsType<FolderResult<RecordFolder>.Opened>(RecordFolder.Open(_disk.Folder)).Folder;
        var later = new HashSet<string>();
        for (var at = _vehicles.Count - 1; at >= 0; at--)
        {
            // A number that nothing was kept under is given again.
            if (later.Add(_vehicles[at].Run)) _vehicles[at] = _vehicles[at] with { Recorded = record.Runs.Load(_vehicles[at].Run)?.Events };
        }

        return new PlayedStory(story, [.. _vehicles], [.. _openings], record.Verify(), record.Runs.List(new Records.Reading.RunFilter()));
    }

    private string NextFolder() => Directory.CreateDirectory(Path.Combine(_root.Path, $"{++_folders}")).FullName;

    /// <summary>The files of a data folder in which nothing has run; making them anew for each story would cost more than the story.</summary>
    private static (string Name, byte[] Bytes)[] MakeNewFolder()
    {
        using var folder = new QuickFolder();
        Assert.IsType<FolderResult<DataFolder>.Opened>(DataFolder.Open(folder.Path, new FixedClock(Start)));
        return [.. Directory.GetFiles(folder.Path).Select(file => (Path.GetFileName(file), File.ReadAllBytes(file)))];
    }
}
