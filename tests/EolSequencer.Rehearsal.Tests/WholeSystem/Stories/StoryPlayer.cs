using System.Collections.Immutable;
using EolSequencer.Model.Events;
using EolSequencer.Records;
using EolSequencer.Records.Reading;
using EolSequencer.Records.Stations;
using EolSequencer.Records.Verify;
using EolSequencer.Rehearsal.Tests.Kit;
using EolSequencer.Rehearsal.Tests.WholeSystem.Storage;
using EolSequencer.Simulators.Randomness;
using EolSequencer.Simulators.Time;
using EolSequencer.Station.Identifying;
using EolSequencer.Station.Resuming;
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
    private readonly RandomStream _takeovers;
    private readonly bool _diskLies;
    private SimulatedDisk _disk;
    private StationHold? _station;
    private DateTimeOffset _wall = Start;
    private int _folders;

    /// <param name="diskLies">True: on disks that confirm what they have not kept.</param>
    private StoryPlayer(ulong seed, bool diskLies)
    {
        (_chance, _takeovers, _diskLies) = (new RandomStream(seed, "disk"), new RandomStream(seed, "takeovers"), diskLies);
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
        player.TakeUpWhatIsLeft();
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
        var station = Assert.IsType<TakenStation.Taken>(folder.TakeStation(Station)).Station;
        foreach (var (place, run) in BrokenOffRun.Of(folder, Station).Index()) TakeUp(folder, station, run.Run, isNewest: place == 0);
        return station;
    }

    /// <summary>What a station does about a run that broke off: it leaves the vehicle safe; then somebody identifies a vehicle, and the run goes on or ends.</summary>
    private void TakeUp(DataFolder folder, StationHold station, string run, bool isNewest)
    {
        var at = _vehicles.FindLastIndex(vehicle => vehicle.Run == run);
        var story = _vehicles[at].Story;
        _vehicles[at] = _vehicles[at] with { Recorded = Broken().Events };
        if (isNewest) Play(ResumedFor.Safety);
        var isSame = _takeovers.Share() < 0.7;
        var identified = DemoPlant.Orders[isSame ? story.Order : (story.Order + 1) % DemoPlant.Orders.Count];
        if (isNewest && Broken().WhyNot(identified, SystemRun.Plant, RunMode.Production, _wall) is null) Play(ResumedFor.Steps);
        else EndIt();

        BrokenOffRun Broken()
        {
            var events = folder.Record.Runs.Load(run)!.Events;
            return new BrokenOffRun(new IdentifiedVehicle(DemoPlant.Station, SystemRun.Plant, SystemPlant.Sequence, ((RunBegun)events[0]).Order), events);
        }

        void Play(ResumedFor what)
        {
            var (part, took) = SystemRun.TakeUp(story, what, Broken().Events, station.ContinueRun(run), _wall);
            Note(part);
            _wall += took + TimeSpan.FromMinutes(1);
        }

        void EndIt()
        {
            var broken = Broken();
            var time = new VirtualTime(_wall);
            var told = new ToldJournal(station.ContinueRun(run), time);
            broken.End(told, time, null);
            Note(new TakenUp(ResumedFor.End, broken.Events, [.. told.Told.Select(one => one.Event)], []));
        }

        void Note(TakenUp part) => _vehicles[at] = _vehicles[at] with { TakenUp = _vehicles[at].TakenUp.Add(part) };
    }

    /// <summary>The program ends, and begins once more where a run is left that broke off.</summary>
    private void TakeUpWhatIsLeft()
    {
        End();
        _disk.Expect(null);
        if (OpenToRead().Runs.List(new RunFilter { OnlyUnfinished = true }).IsEmpty) return;
        _station = Begin();
        End();
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
        var record = OpenToRead();
        var later = new HashSet<string>();
        for (var at = _vehicles.Count - 1; at >= 0; at--)
        {
            // A number that nothing was kept under is given again.
            if (!later.Add(_vehicles[at].Run)) continue;
            var events = record.Runs.Load(_vehicles[at].Run)?.Events;
            _vehicles[at] = _vehicles[at] with { AtLast = events, Recorded = _vehicles[at].TakenUp.IsEmpty ? events : _vehicles[at].Recorded };
        }

        return new PlayedStory(story, [.. _vehicles], [.. _openings], record.Verify(), record.Runs.List(new RunFilter()));
    }

    private RecordFolder OpenToRead() => Assert.IsType<FolderResult<RecordFolder>.Opened>(RecordFolder.Open(_disk.Folder)).Folder;

    private string NextFolder() => Directory.CreateDirectory(Path.Combine(_root.Path, $"{++_folders}")).FullName;

    /// <summary>The files of a data folder in which nothing has run; making them anew for each story would cost more than the story.</summary>
    private static (string Name, byte[] Bytes)[] MakeNewFolder()
    {
        using var folder = new QuickFolder();
        Assert.IsType<FolderResult<DataFolder>.Opened>(DataFolder.Open(folder.Path, new FixedClock(Start)));
        return [.. Directory.GetFiles(folder.Path).Select(file => (Path.GetFileName(file), File.ReadAllBytes(file)))];
    }
}
