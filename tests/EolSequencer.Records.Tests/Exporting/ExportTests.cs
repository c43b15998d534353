using System.Text;
using System.Text.Json;
using EolSequencer.Model.Events;
using EolSequencer.Records.Exporting;
using EolSequencer.Records.Tests.Samples;

namespace EolSequencer.Records.Tests.Exporting;

/// <summary>What leaves the record for other programs must be what it holds, all of what was asked for and nothing else.</summary>
public sealed class ExportTests : IDisposable
{
    private const string OtherVin = "9Z9RR1N42TF000018";

    private readonly TempFolder _folder = new();

    [Fact]
    public void A_run_has_a_line_and_so_has_every_attempt_of_a_step()
    {
        _folder.WriteRuns(2);

        Assert.Equal(["startup_1-000001", "startup_1-000002"], Lines(ExportSubject.Runs).Select(line => line.GetProperty("run").GetString()));
        var steps = Lines(ExportSubject.Steps);
        var judged = SampleRun.Of("startup_1-000001").OfType<Judged>().ToArray();
        Assert.Equal(judged.Concat(judged).Select(one => one.Step), steps.Select(line => line.GetProperty("step").GetString()));
        var read = steps[0];
        Assert.Equal(("1.81", "A", "1.60", "2.40", "pass"), (Of(read, "value"), Of(read, "unit"), Of(read, "low"), Of(read, "high"), Of(read, "verdict")));
        Assert.Equal(("M-0417", "production", SampleRun.Vin), (read.GetProperty("instrument").GetString(), read.GetProperty("mode").GetString(), read.GetProperty("vin").GetString()));
        Assert.Equal(0.056789m, read.GetProperty("tookSeconds").GetDecimal());
        Assert.Equal(2, steps[4].GetProperty("criteria").GetArrayLength());
    }

    [Fact]
    public void Of_two_results_of_a_step_the_later_is_the_last()
    {
        using (var station = _folder.Take())
        {
            var journal = station.BeginRun();
            var events = SampleRun.Of(journal.Run);
            var first = events.OfType<Judged>().First();
            TempFolder.Append(journal, events.Take(first.N));
            TempFolder.Append(journal, [first with { N = first.N + 1, Attempt = 2 }]);
        }

        Assert.Equal([(1, false), (2, true)], Lines(ExportSubject.Steps).Select(line => (line.GetProperty("attempt").GetInt32(), line.GetProperty("last").GetBoolean())));
    }

    [Fact]
    public void Rehearsals_come_only_when_asked_for_and_are_marked()
    {
        _folder.WriteRuns(1);
        RehearsedRuns.Write(_folder, 1);

        Assert.Equal("production", Assert.Single(Lines(ExportSubject.Runs)).GetProperty("mode").GetString());
        Assert.Equal("rehearsal", Assert.Single(Lines(ExportSubject.Runs, new ExportFilter { Mode = RunMode.Rehearsal })).GetProperty("mode").GetString());
    }

    [Fact]
    public void Vehicle_and_station_choose()
    {
        using (var station = _folder.Take()) TempFolder.WriteRun(station);
        using (var station = _folder.Take("brakes_1")) TempFolder.WriteRun(station, vin: OtherVin);

        Assert.Equal("brakes_1-000001", Assert.Single(Lines(ExportSubject.Runs, new ExportFilter { Vin = OtherVin })).GetProperty("run").GetString());
        Assert.Equal("startup_1-000001", Assert.Single(Lines(ExportSubject.Runs, new ExportFilter { Station = "startup_1" })).GetProperty("run").GetString());
        Assert.Empty(Lines(ExportSubject.Runs, new ExportFilter { Station = "brakes_1", Vin = SampleRun.Vin }));
    }

    [Theory]
    [InlineData("Europe/Oslo", "2026-03-29T00:45:00Z", 29)]
    [InlineData("Europe/Oslo", "2026-03-29T23:30:00Z", 30)]
    [InlineData("Pacific/Kiritimati", "2026-03-29T10:30:00Z", 30)]
    [InlineData("Pacific/Pago_Pago", "2026-03-29T10:30:00Z", 28)]
    public void A_day_is_one_of_the_plants_clock(string zone, string wall, int day)
    {
        using (var station = _folder.Take())
        {
            var journal = station.BeginRun();
            var events = SampleRun.Of(journal.Run);
            TempFolder.Append(journal, [((RunBegun)events[0]) with { Zone = zone, Wall = DateTimeOffset.Parse(wall, System.Globalization.CultureInfo.InvariantCulture) }, .. events.Skip(1)]);
        }

        foreach (var other in Enumerable.Range(day - 2, 5).Select(of => new DateOnly(2026, 3, 1).AddDays(of - 1)))
        {
            Assert.Equal(other.AddDays(1 - day) == new DateOnly(2026, 3, 1) ? 1 : 0, Lines(ExportSubject.Runs, new ExportFilter { From = other, To = other }).Count);
        }

        Assert.Single(Lines(ExportSubject.Runs, new ExportFilter { From = DateOnly.MinValue, To = DateOnly.MaxValue }));
    }

    [Fact]
    public void A_run_under_way_has_no_end_in_its_line()
    {
        using (var station = _folder.Take()) TempFolder.Append(station.BeginRun(), SampleRun.Of("startup_1-000001").Take(6));

        Assert.False(Assert.Single(Lines(ExportSubject.Runs)).TryGetProperty("verdict", out _));
        Assert.Single(Lines(ExportSubject.Steps));
    }

    [Fact]
    public void A_text_that_a_spreadsheet_would_obey_is_harmless_in_the_table_and_exact_in_JSON()
    {
        const string Formula = "=cmd|' /C calc'!A0";
        using (var station = _folder.Take())
        {
            var journal = station.BeginRun();
            var events = SampleRun.Of(journal.Run);
            var first = events.OfType<Judged>().First();
            TempFolder.Append(journal, [.. events.Take(first.N - 1), first with { Detail = Formula }]);
        }

        Assert.Equal(Formula, Lines(ExportSubject.Steps)[0].GetProperty("detail").GetString());
        Assert.Contains(",'" + Formula + ",", Text(ExportSubject.Steps, ExportForm.Csv, new ExportFilter()), StringComparison.Ordinal);
    }

    public void Dispose() => _folder.Dispose();

    private static string? Of(JsonElement line, string field) => line.GetProperty("criteria")[0].GetProperty(field).GetString();

    private List<JsonElement> Lines(ExportSubject subject, ExportFilter? filter = null) =>
        [.. Text(subject, ExportForm.JsonLines, filter ?? new ExportFilter()).Split('\n', StringSplitOptions.RemoveEmptyEntries).Select(line => JsonDocument.Parse(line).RootElement)];

    private string Text(ExportSubject subject, ExportForm form, ExportFilter filter)
    {
        using var to = new MemoryStream();
        var count = _folder.OpenToRead().Exports.Write(to, subject, form, filter);
        var text = new UTF8Encoding(false, throwOnInvalidBytes: true).GetString(to.ToArray());
        if (form == ExportForm.JsonLines) Assert.Equal(text.Count(character => character == '\n'), count.Lines);
        return text;
    }
}
