using System.Globalization;
using EolSequencer.Model.Events;
using EolSequencer.Model.Judging;
using EolSequencer.Records.Reading;
using EolSequencer.Records.Tests.Samples;

namespace EolSequencer.Records.Tests.Reading;

/// <summary>Quality asks for a vehicle, a day, a station; the answers must be those runs and no others.</summary>
public sealed class RunReaderTests : IDisposable
{
    private const string OtherVin = "9Z9RR1N42TF000025";

    private readonly TempFolder _folder = new();

    [Fact]
    public void A_list_is_narrowed_by_everything_that_is_asked()
    {
        using (var startup = _folder.Take("startup_1"))
        using (var roller = _folder.Take("roller_1"))
        {
            TempFolder.WriteRun(startup);
            TempFolder.WriteRun(startup, counted: Verdict.Fail);
            TempFolder.WriteRun(startup, vin: OtherVin);
            TempFolder.WriteRun(roller, kind: "roller");
            TempFolder.Append(startup.BeginRun(), SampleRun.Of("startup_1-000004").Take(3));
        }

        Assert.Equal(["startup_1-000004", "roller_1-000001", "startup_1-000003", "startup_1-000002", "startup_1-000001"], Listed(new()));
        Assert.Equal(["startup_1-000002"], Listed(new() { Verdict = Verdict.Fail }));
        Assert.Equal(["startup_1-000003"], Listed(new() { Vin = OtherVin }));
        Assert.Equal(["roller_1-000001"], Listed(new() { Station = "roller_1" }));
        Assert.Equal(["roller_1-000001"], Listed(new() { StationKind = "roller" }));
        Assert.Equal(["startup_1-000004"], Listed(new() { OnlyUnfinished = true }));
        Assert.Equal(["startup_1-000002", "startup_1-000001"], Listed(new() { Before = "startup_1-000003" }));
        Assert.Equal(["startup_1-000004", "roller_1-000001"], Listed(new() { Most = 2 }));
        Assert.Empty(Listed(new() { Sequence = "orrin_roller" }));
    }

    [Theory]
    [InlineData(true, 0)]
    [InlineData(false, 3)]
    public void A_text_of_digits_is_found_as_text_and_never_as_a_number(bool isText, int numbers)
    {
        var software = new CriterionResult("", "2.10", null, null, null, null, null, Verdict.None, false) { IsText = isText };
        using (var station = _folder.Take("startup_1"))
        {
            var journal = station.BeginRun();
            TempFolder.Append(journal, SampleRun.Of(journal.Run).Take(1));
            journal.Append(SampleRun.Read(2, 1000, "software", null, Verdict.None) with { Criteria = [software] });
            journal.Append(SampleRun.Read(3, 2000, "copies", null, Verdict.None) with { Criteria = [software with { Of = "gateway" }, software with { Of = "brakes", Value = "A1", IsText = true }] });
        }

        var found = _folder.Ask<long>("SELECT count(*) FROM step WHERE value = 2.1")[0] + _folder.Ask<long>("SELECT count(*) FROM criterion WHERE value = 2.1")[0];
        Assert.Equal(numbers, found);
        Assert.Equal(2, _folder.Ask<long>("SELECT count(*) FROM step WHERE value_text = '2.10'")[0]);
        Assert.True(_folder.OpenToRead().Verify().IsWhole);
    }

    [Fact]
    public void A_day_begins_with_its_first_moment_and_ends_before_the_next()
    {
        _folder.WriteRuns(1);

        Assert.Single(Listed(new() { From = SampleRun.Wall, Until = SampleRun.Wall.AddTicks(1) }));
        Assert.Empty(Listed(new() { From = SampleRun.Wall.AddTicks(1) }));
        Assert.Empty(Listed(new() { Until = SampleRun.Wall }));
        Assert.Single(Listed(new() { From = SampleRun.Wall.ToOffset(TimeSpan.FromHours(2)) }));
    }

    [Fact]
    public void What_is_not_there_is_null_or_empty()
    {
        _folder.WriteRuns(1);
        var runs = _folder.OpenToRead().Runs;

        Assert.Null(runs.Find("startup_1-000009"));
        Assert.Null(runs.Load("startup_1-000009"));
        Assert.Empty(runs.Steps("startup_1-000009"));
    }

    [Fact]
    public void A_damaged_event_is_a_fault_that_says_what_to_do()
    {
        _folder.WriteRuns(1);
        _folder.Tamper("UPDATE event SET bytes = x'7B7D' WHERE n = 5");

        Assert.Contains("run verify", Assert.Throws<RecordFault>(() => _folder.OpenToRead().Runs.Load("startup_1-000001")).Message);
    }

    [Fact]
    public void A_reader_sees_whole_events_while_a_run_writes()
    {
        using var station = _folder.Take();
        var journal = station.BeginRun();
        var events = SampleRun.Of(journal.Run, steps: 150);
        journal.Append(events[0]);
        var runs = _folder.OpenToRead().Runs;
        var writer = new Thread(() => TempFolder.Append(journal, events.Skip(1)));
        writer.Start();

        var seen = 0;
        while (runs.Find(journal.Run)!.End is null)
        {
            var now = runs.Load(journal.Run)!.Events.Length;
            Assert.InRange(now, seen, events.Length);
            seen = now;
        }

        writer.Join();
        Assert.True(Structural.AreEqual(events, runs.Load(journal.Run)!.Events));
    }

    [Fact]
    public void Nothing_depends_on_the_culture()
    {
        var before = CultureInfo.CurrentCulture;
        CultureInfo.CurrentCulture = new CultureInfo("de-DE");
        try
        {
            var run = _folder.WriteRuns(1)[0];
            Assert.Equal(1.81, _folder.OpenToRead().Runs.Steps(run)[0].Value);
            Assert.True(_folder.OpenToRead().Verify().IsWhole);
        }
        finally
        {
            CultureInfo.CurrentCulture = before;
        }
    }

    public void Dispose() => _folder.Dispose();

    private IEnumerable<string> Listed(RunFilter filter) => _folder.OpenToRead().Runs.List(filter).Select(run => run.Run);
}
