using System.Collections.Immutable;
using EolSequencer.Model.Events;
using EolSequencer.Records;
using EolSequencer.Records.Stations;

namespace EolSequencer.Cli.Tests.Kit;

/// <summary>A record of production runs: the events of a rehearsal, written down as what a station with real devices would have written.</summary>
internal sealed class ProductionRecord(string data)
{
    /// <summary>Writes a rehearsed run as one that counts, at a station of its own.</summary>
    /// <param name="kind">The station kind it is said to be of.</param>
    public string Write(RunBegun begun, IEnumerable<RunEvent> events, string kind)
    {
        var folder = ((FolderResult<DataFolder>.Opened)DataFolder.Open(data, TimeProvider.System)).Folder;
        using var station = ((StationResult.Taken)folder.TakeStation($"{kind}_1")).Station;
        var journal = station.BeginRun();
        journal.Append(begun with { Run = journal.Run, Station = $"{kind}_1", StationKind = kind, Mode = RunMode.Production, Seed = null, Injected = [] });
        foreach (var next in events.Skip(1)) journal.Append(next);
        return journal.Run;
    }

    /// <summary>Every event of a run in another record.</summary>
    public static ImmutableArray<RunEvent> Rehearsed(string rehearsals, string run) =>
        ((FolderResult<RecordFolder>.Opened)RecordFolder.Open(rehearsals)).Folder.Runs.Load(run)!.Events;
}
