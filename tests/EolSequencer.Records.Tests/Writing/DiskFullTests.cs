using EolSequencer.Model.Events;
using EolSequencer.Model.Ports;
using EolSequencer.Records.Tests.Samples;

namespace EolSequencer.Records.Tests.Writing;

/// <summary>The disk fills in the middle of a vehicle: what was reported stays, what could not be kept is not there by half.</summary>
[Trait("case", "SQL-07")]
public sealed class DiskFullTests
{
    private const int Steps = 150;

    [Fact]
    public void Wherever_it_fills_every_reported_event_is_kept_and_nothing_else()
    {
        var faults = 0;
        while (true)
        {
            using var folder = new TempFolder();
            var (run, reported, fault) = WriteUntilFull(folder, morePages: faults);
            CheckWhatIsKept(folder, run, reported);
            if (fault is null) break;
            Assert.Equal($"cannot write records: the disk is full ({folder.Database})", fault.Message);
            Assert.True(++faults < 100, "a run of 150 steps does not fit into 100 pages");
        }

        Assert.InRange(faults, 3, 100);
    }

    [Fact]
    public void Once_there_is_room_the_same_run_goes_on()
    {
        using var folder = new TempFolder();
        var (run, reported, fault) = WriteUntilFull(folder, morePages: 3);
        Assert.NotNull(fault);
        Assert.InRange(reported, 2, Steps);

        using var station = folder.Take();
        TempFolder.Append(station.ContinueRun(run), SampleRun.Of(run, steps: Steps).Skip(reported));

        Assert.True(folder.OpenToRead().Verify().IsWhole);
    }

    private static (string Run, int Reported, JournalFault? Fault) WriteUntilFull(TempFolder folder, int morePages)
    {
        folder.Open();
        var pages = folder.Ask<int>("PRAGMA page_count")[0];
        using var station = folder.Take(options: RecordOptions.Usual with { MostPages = pages + morePages });
        var journal = station.BeginRun();
        var reported = 0;
        try
        {
            foreach (var next in SampleRun.Of(journal.Run, steps: Steps))
            {
                journal.Append(next);
                reported = next.N;
            }

            return (journal.Run, reported, null);
        }
        catch (JournalFault fault)
        {
            Assert.Equal(reported, journal.Count);
            return (journal.Run, reported, fault);
        }
    }

    private static void CheckWhatIsKept(TempFolder folder, string run, int reported)
    {
        var record = folder.OpenToRead();
        var report = record.Verify();
        Assert.True(report.IsWhole, string.Join('\n', report.Findings));
        Assert.Equal(reported, record.Runs.Load(run)?.Events.Length ?? 0);
        Assert.Equal(SampleRun.Of(run, steps: Steps).Take(reported).OfType<Judged>().Count(), record.Runs.Steps(run).Length);
    }
}
