using System.Collections.Immutable;
using System.Globalization;
using EolSequencer.Model.Events;
using EolSequencer.Model.Judging;
using EolSequencer.Model.Ports;
using EolSequencer.Model.Values;
using EolSequencer.Model.Vehicles;
using EolSequencer.Station.Log;
using EolSequencer.Station.Running;

namespace EolSequencer.Station.Tests.Log;

/// <summary>The log helps whoever looks after the station, and may cost a test neither its result nor its record.</summary>
public sealed class StationLogTests : IDisposable
{
    private const string Today = "startup_1-2026-03-02.log";

    private readonly DirectoryInfo _data = Directory.CreateTempSubdirectory("station-log-");
    private readonly SetClock _clock = new();

    public void Dispose() => _data.Delete(recursive: true);

    [Fact]
    public void A_day_reads_like_this()
    {
        using (var log = Open())
        {
            log.Note(Begun());
            log.Note(new DeviceLost { N = 2, At = 1, Role = "bus", Cause = "no frame\nfor 2 s" });
            log.Note(new DeviceBack { N = 3, At = 2, Role = "bus" });
            log.Note(Ended(interrupted: false));
            log.Note(Ended(interrupted: true));
            log.Refused("meter: no answer from 10.0.0.7");
            log.RecordFault("disk full");
        }

        Assert.Equal(
            $"""
            2026-03-02T23:59:58.250Z INF program {VehicleRun.Program} begins as process {Environment.ProcessId}
            2026-03-02T23:59:58.250Z INF run startup_1-7 begun: production, sequence startup revision 3, order FV-1, vehicle TESTVXN06AA000017
            2026-03-02T23:59:58.250Z WRN run startup_1-7: device bus lost: no frame for 2 s
            2026-03-02T23:59:58.250Z INF run startup_1-7: device bus is back
            2026-03-02T23:59:58.250Z INF run startup_1-7 ended: fail; 1200 pass, 2 fail, 0 error, 1 inconclusive, 0 not reached
            2026-03-02T23:59:58.250Z INF run startup_1-7 interrupted: fail; 1200 pass, 2 fail, 0 error, 1 inconclusive, 0 not reached
            2026-03-02T23:59:58.250Z WRN refused: meter: no answer from 10.0.0.7
            2026-03-02T23:59:58.250Z ERR record: disk full
            2026-03-02T23:59:58.250Z INF program ends

            """.ReplaceLineEndings("\n"),
            Read(Today));
    }

    [Theory]
    [InlineData("de-DE")]
    [InlineData("ar-SA")] // another calendar
    public void It_reads_the_same_in_every_language_of_the_computer(string language)
    {
        var before = CultureInfo.CurrentCulture;
        CultureInfo.CurrentCulture = new CultureInfo(language);
        try
        {
            using (var log = Open()) log.Note(Ended(interrupted: false));
        }
        finally
        {
            CultureInfo.CurrentCulture = before;
        }

        Assert.Contains("2026-03-02T23:59:58.250Z INF run  ended: fail; 1200 pass", Read(Today), StringComparison.Ordinal);
    }

    [Fact]
    public void Events_that_the_record_alone_needs_leave_no_line()
    {
        using var log = Open();
        log.Note(new Asked { N = 2, At = 1, Step = "seen", Attempt = 1, Prompt = 1, Kind = PromptKind.Judge });

        Assert.Single(Lines(Today));
    }

    [Fact, Trait("case", "LOG-01")]
    public void A_line_is_in_the_file_before_the_run_goes_on()
    {
        using var log = Open();
        log.Note(Begun());

        Assert.Contains("run startup_1-7 begun", Lines(Today)[^1], StringComparison.Ordinal);
    }

    [Fact, Trait("case", "LOG-01")]
    public void The_log_comes_after_the_record_and_never_says_more()
    {
        using var log = Open();
        var journal = new ShowingJournal(new FullJournal(), log.Note);

        Assert.Throws<JournalFault>(() => journal.Append(Begun()));
        Assert.Single(Lines(Today));
    }

    [Fact, Trait("case", "LOG-02")]
    public void A_file_that_somebody_else_has_taken_costs_lines_and_brings_no_second_name()
    {
        Directory.CreateDirectory(PathOf(""));
        using var log = TakenByAnother(Today, () =>
        {
            var opened = Open();
            opened.Note(Begun());
            Assert.Contains(Today, opened.Trouble, StringComparison.Ordinal);
            return opened;
        });
        log.Note(Ended(interrupted: false));

        Assert.Null(log.Trouble);
        Assert.Equal([Today], Files());
        Assert.Contains("ended: fail", Assert.Single(Lines(Today)), StringComparison.Ordinal);
    }

    [Fact, Trait("case", "LOG-02")]
    public void A_program_that_starts_again_goes_on_in_the_file_of_the_day()
    {
        Open().Dispose();
        Open().Dispose();

        Assert.Equal([Today], Files());
        Assert.Equal([false, true, false, true], Lines(Today).Select(line => line.EndsWith("program ends", StringComparison.Ordinal)));
    }

    [Fact]
    public void A_folder_that_cannot_be_made_disturbs_nobody()
    {
        File.WriteAllText(PathOf(""), "a file where the folder should be");
        using var log = Open();
        log.Note(Begun());
        log.Refused("nothing");

        Assert.NotNull(log.Trouble);
    }

    [Fact]
    public void A_day_of_UTC_has_a_file_of_its_own()
    {
        using (var log = Open())
        {
            _clock.Now = new DateTimeOffset(2026, 3, 3, 0, 30, 0, TimeSpan.FromHours(1));
            log.Refused("still the day before");
            _clock.Now = new DateTimeOffset(2026, 3, 3, 1, 0, 0, TimeSpan.FromHours(1));
            log.Refused("midnight");
        }

        Assert.Equal([Today, "startup_1-2026-03-03.log"], Files());
        Assert.Contains("2026-03-02T23:30:00.000Z", Lines(Today)[^1], StringComparison.Ordinal);
        Assert.Contains("2026-03-03T00:00:00.000Z", Lines("startup_1-2026-03-03.log")[0], StringComparison.Ordinal);
    }

    [Fact]
    public void Files_of_the_last_ninety_days_before_are_kept_and_nobody_else_s_are_touched()
    {
        var folder = Directory.CreateDirectory(PathOf("")).FullName;
        for (var day = 1; day <= 95; day++) Put($"startup_1-{_clock.Now.AddDays(-day):yyyy-MM-dd}.log");
        Put("startup_1-notes.log");
        Put("startup_10-2020-01-01.log");

        Open().Dispose();

        Assert.Equal(91 + 2, Files().Length);
        Assert.Contains("startup_1-notes.log", Files());
        Assert.Contains("startup_10-2020-01-01.log", Files());
        Assert.DoesNotContain($"startup_1-{_clock.Now.AddDays(-91):yyyy-MM-dd}.log", Files());

        void Put(string name) => File.WriteAllText(Path.Combine(folder, name), "");
    }

    private StationLog Open() => StationLog.Open(_data.FullName, "startup_1", _clock);

    private T TakenByAnother<T>(string name, Func<T> meanwhile)
    {
        using var taken = new FileStream(PathOf(name), FileMode.OpenOrCreate, FileAccess.ReadWrite, FileShare.None);
        return meanwhile();
    }

    private string PathOf(string name) => Path.TrimEndingDirectorySeparator(Path.Combine(_data.FullName, "log", name));

    private string[] Files() => [.. Directory.GetFiles(PathOf("")).Select(path => Path.GetFileName(path)).Order(StringComparer.Ordinal)];

    private string Read(string name)
    {
        using var reader = new StreamReader(new FileStream(PathOf(name), FileMode.Open, FileAccess.Read, FileShare.ReadWrite));
        return reader.ReadToEnd();
    }

    private string[] Lines(string name) => Read(name).Split('\n', StringSplitOptions.RemoveEmptyEntries);

    private static RunBegun Begun() => new()
    {
        N = 1,
        At = 0,
        Run = "startup_1-7",
        Plant = "fennholt",
        Station = "startup_1",
        StationKind = "startup",
        Sequence = "startup",
        Revision = 3,
        Order = new Order(
            "FV-1", Vin.TryParse("TESTVXN06AA000017", CheckDigitRule.Require).Vin!, "orrin",
            ImmutableSortedDictionary<string, Value>.Empty, ImmutableSortedDictionary<string, Value>.Empty),
        Sources = [],
        Compiled = "",
        Program = "test",
        Mode = RunMode.Production,
        Zone = "UTC",
        Wall = default,
        Planned = 1,
    };

    private static RunEnded Ended(bool interrupted) =>
        new() { N = 9, At = 5, RollUp = new RollUp(0, 1200, 1, 2, 0), Interrupted = interrupted };

    private sealed class FullJournal : IRunJournal
    {
        public void Append(RunEvent next) => throw new JournalFault("disk full");
    }
}
