using EolSequencer.Model.Events;
using EolSequencer.Records.Tests.Samples;

namespace EolSequencer.Records.Tests.Exporting;

/// <summary>Writes small rehearsals, many at a time.</summary>
internal static class RehearsedRuns
{
    public static void Write(TempFolder folder, int runs)
    {
        using var station = folder.Take();
        using var batch = station.BeginBatch();
        for (var run = 0; run < runs; run++)
        {
            using var journal = batch.BeginRun();
            TempFolder.Append(journal, SampleRun.Of(journal.Run, RunMode.Rehearsal));
            journal.Complete();
        }
    }
}
