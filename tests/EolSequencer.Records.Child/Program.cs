using System.Globalization;
using EolSequencer.Model.Events;
using EolSequencer.Model.Ports;
using EolSequencer.Records;
using EolSequencer.Records.Stations;
using EolSequencer.Records.Tests.Samples;

// A process of its own for tests that end one: takes a station and writes runs, and says each event once it is reported.
// Arguments: durable | batch, data folder, station, number of runs, steps of a run. Ends with 9 when the station is taken.
var (how, folder, station) = (args[0], args[1], args[2]);
var runs = int.Parse(args[3], CultureInfo.InvariantCulture);
var steps = int.Parse(args[4], CultureInfo.InvariantCulture);

if (DataFolder.Open(folder, TimeProvider.System) is not FolderResult<DataFolder>.Opened { Folder: var data }) return 8;
if (data.TakeStation(station) is not StationResult.Taken { Station: var hold }) return 9;
using (hold)
{
    if (how == "durable") WriteDurably(hold);
    else WriteBatch(hold);
}

return 0;

void WriteDurably(StationHold hold)
{
    for (var k = 0; k < runs; k++)
    {
        var journal = hold.BeginRun();
        Tell(journal, journal.Run, RunMode.Production);
    }
}

void WriteBatch(StationHold hold)
{
    using var batch = hold.BeginBatch();
    for (var k = 0; k < runs; k++)
    {
        using var journal = batch.BeginRun();
        Tell(journal, journal.Run, RunMode.Rehearsal);
        journal.Complete();
    }

    batch.Complete();
}

void Tell(IRunJournal journal, string run, RunMode mode)
{
    foreach (var next in SampleRun.Of(run, mode, steps))
    {
        journal.Append(next);
        Console.WriteLine($"{run} {next.N}");
    }
}
