using EolSequencer.Model.Events;
using EolSequencer.Records.Reading;
using EolSequencer.Records.Stations;
using EolSequencer.Records.Tests.Samples;

namespace EolSequencer.Records.Tests;

/// <summary>A station computer loses its program in the middle of a vehicle: nothing that was reported may be lost, and no half of anything may be there.</summary>
public sealed class ProcessTests : IDisposable
{
    private readonly TempFolder _folder = new();

    [Theory]
    [Trait("case", "LOG-01")]
    [InlineData(1)]
    [InlineData(2)]
    [InlineData(17)]
    [InlineData(120)]
    [InlineData(300)]
    public void A_killed_station_keeps_every_reported_event_and_the_run_can_go_on(int eventsBefore)
    {
        var last = KillAfter("durable", eventsBefore);
        var record = _folder.OpenToRead();

        var tail = record.VerifyTail();
        Assert.True(tail.IsWhole, string.Join('\n', tail.Findings));
        var report = record.Verify();
        Assert.True(report.IsWhole, string.Join('\n', report.Findings));
        var kept = record.Runs.Load(last.Run)!.Events;
        Assert.InRange(kept.Length, last.N, SampleRun.Of(last.Run, steps: 150).Length);
        Assert.True(Structural.AreEqual(SampleRun.Of(last.Run, steps: 150).Take(kept.Length).ToArray(), kept.ToArray()));

        using var station = _folder.Take();
        foreach (var run in report.Unfinished) TempFolder.Append(station.ContinueRun(run), SampleRun.Of(run, steps: 150).Skip(record.Runs.Load(run)!.Events.Length));
        Assert.True(record.Verify() is { IsWhole: true, Unfinished.IsEmpty: true });
    }

    [Theory]
    [InlineData(100)]
    [InlineData(2000)]
    public void A_killed_rehearsal_leaves_whole_runs_only(int eventsBefore)
    {
        KillAfter("batch", eventsBefore);

        var report = _folder.OpenToRead().Verify();

        Assert.True(report.IsWhole, string.Join('\n', report.Findings));
        Assert.Empty(report.Unfinished);
        Assert.Equal(report.Runs * SampleRun.Of("startup_1-000001", steps: 150).Length, report.Events);
    }

    [Fact]
    [Trait("case", "LOG-02")]
    public void A_station_of_another_process_is_refused_and_free_once_that_process_is_gone()
    {
        using var child = ChildProcess.Start("durable", _folder, "startup_1", runs: 1000, steps: 150);
        Assert.NotNull(child.Next());

        var refused = Assert.IsType<StationResult.Refused>(_folder.Open().TakeStation("startup_1"));
        Assert.Equal(child.Id, refused.Process);
        Assert.Contains($"process {child.Id} ", refused.Why);

        child.Kill();
        _folder.Take("startup_1").Dispose();
    }

    [Fact]
    public void Two_processes_write_one_record_and_it_is_whole()
    {
        _folder.Open();
        using var first = ChildProcess.Start("durable", _folder, "startup_1", runs: 5, steps: 40);
        using var second = ChildProcess.Start("batch", _folder, "startup_2", runs: 30, steps: 40);
        using (var own = _folder.Take("startup_3"))
        {
            for (var k = 0; k < 5; k++) TempFolder.WriteRun(own, steps: 40);
        }

        Assert.Equal((0, 0), (first.ExitCode(), second.ExitCode()));
        var report = _folder.OpenToRead().Verify();
        Assert.True(report.IsWhole, string.Join('\n', report.Findings));
        Assert.Equal(40, report.Runs);
        Assert.Equal(10, _folder.OpenToRead().Runs.List(new RunFilter { Mode = RunMode.Production }).Length);
    }

    public void Dispose() => _folder.Dispose();

    private (string Run, int N) KillAfter(string how, int events)
    {
        using var child = ChildProcess.Start(how, _folder, "startup_1", runs: 1000, steps: 150);
        var last = child.Next();
        for (var k = 1; k < events; k++) last = child.Next();
        child.Kill();

        // What it reported before it was killed still stands in the pipe.
        return child.Rest().LastOrDefault(last!.Value);
    }
}
