using System.Buffers;
using System.Text;
using System.Text.Json;
using CsCheck;
using EolSequencer.Model.Events;
using EolSequencer.Model.Judging;
using EolSequencer.Records.Canonical;
using EolSequencer.Records.Tests.Samples;

namespace EolSequencer.Records.Tests.Canonical;

/// <summary>What is kept for years must be what was found: nothing may be lost or changed on the way into bytes and back.</summary>
public sealed class EventFormTests
{
    [Fact]
    public void Every_event_reads_back_as_it_was() => AnyEvent.Any.Sample(
        written =>
        {
            var read = Back(written);
            Assert.True(Structural.AreEqual(written, read), $"written {written}\nread    {read}");
        },
        iter: 5_000);

    [Fact]
    public void Every_kind_of_event_is_among_those_tried()
    {
        var kinds = typeof(RunEvent).Assembly.GetTypes().Where(type => type.IsSubclassOf(typeof(RunEvent))).Select(type => type.Name).Order();
        var tried = new System.Collections.Concurrent.ConcurrentDictionary<string, bool>();

        AnyEvent.Any.Sample(written => { tried[written.GetType().Name] = true; }, iter: 2_000);

        Assert.Equal(kinds, tried.Keys.Order());
        Assert.Equal(kinds, SampleRun.Of("startup_1-000001").Select(written => written.GetType().Name).Distinct().Order());
    }

    [Fact]
    public void Reading_and_writing_again_gives_the_same_bytes() => AnyEvent.Any.Sample(
        written => Assert.Equal(Text(written), Text(Back(written))),
        iter: 5_000);

    [Fact]
    public void A_plain_judged_step_looks_like_this()
    {
        var step = SampleRun.Read(112, 123_456_789, "lamps[front_left].current", "1.832", Verdict.Pass);

        Assert.Equal(
            """{"n":112,"t":123456789,"j":"lamps[front_left].current","k":56789,"m":"pass","v":"1.832","u":"A","l":"1.60","h":"2.40","r":[["meter.lamp_current",0,"312E383332","M-0417"]]}""",
            Text(step));
    }

    [Fact]
    public void A_text_stays_a_text_though_it_looks_like_a_number()
    {
        var criterion = new CriterionResult("", "2.10", null, "equals 2.10", null, null, null, Verdict.Pass, false) { IsText = true };
        var step = SampleRun.Read(3, 1000, "units.software", null, Verdict.Pass) with { Criteria = [criterion], Readings = [] };
        Assert.Contains(""""m":"pass","s":"2.10","x":"equals 2.10"""", Text(step));
        Assert.Equal(criterion, Assert.IsType<Judged>(Back(step)).Criteria.Single());
    }

    [Fact]
    public void A_plain_judged_step_of_the_vehicle_bus_takes_170_bytes_at_most()
    {
        var step = SampleRun.Read(112, 123_456_789, "power.battery.at_rest", "12.61", Verdict.Pass) with
        {
            At = 123_457_011,
            Start = 123_400_000,
            Criteria = [new CriterionResult("", "12.61", "V", "12.20 .. 13.10 V", "12.20", "13.10", null, Verdict.Pass, false)],
            Readings = [new ReadingUsed("bus.battery_voltage", "0C5D", 123_456_789, null)],
        };

        Assert.InRange(Text(step).Length, 100, 170);
    }

    [Fact]
    [Trait("case", "MSG-02")]
    [Trait("case", "SQL-03")]
    public void A_reading_that_is_no_number_stops_nothing_and_says_why()
    {
        var notANumber = SampleRun.Read(2, 1000, "trip.current", null, Verdict.Error, MissingCause.NotFinite);
        var overload = SampleRun.Read(3, 2000, "trip.current", null, Verdict.Error, MissingCause.Overload);

        Assert.Contains(""""m":"error","y":"not-finite","u":"A"""", Text(notANumber));
        Assert.Contains(""""y":"overload"""", Text(overload));
        Assert.Equal(MissingCause.NotFinite, Assert.IsType<Judged>(Back(notANumber)).Cause);
    }

    [Fact]
    public void Numbers_of_an_event_are_whole_and_measured_ones_are_text()
    {
        foreach (var found in SampleRun.Of("startup_1-000001"))
        {
            using var document = JsonDocument.Parse(Text(found));
            Assert.All(Numbers(document.RootElement), number => Assert.True(number.TryGetInt64(out _), number.GetRawText()));
        }
    }

    [Theory]
    [InlineData("")]
    [InlineData("{}")]
    [InlineData("[1]")]
    [InlineData("""{"n":1,"t":0}""")]
    [InlineData("""{"n":1,"t":0,"unheard-of":"x"}""")]
    [InlineData("""{"n":1,"t":0,"j":"a.b","k":5,"m":"perhaps"}""")]
    [InlineData("""{"n":1,"t":0,"j":null,"k":5,"m":"pass"}""")]
    [InlineData("""{"n":1,"t":0,"j":"a.b","k":5,"m":"pass","r":[["bus.vin"]]}""")]
    [InlineData("""{"n":1.5,"t":0,"begun":"a.b"}""")]
    [InlineData("""{"n":1,"t":0,"run-ended":"pass","z":[0,0,0,1,0]}""")]
    public void What_is_no_event_is_refused_with_a_reason(string text) =>
        Assert.NotEmpty(Assert.Throws<FormatException>(() => EventForm.Read(Encoding.UTF8.GetBytes(text), new Beside(null))).Message);

    private static RunEvent Back(RunEvent written) => EventForm.Read(Encoding.UTF8.GetBytes(Text(written)), new Beside(written));

    private static string Text(RunEvent next)
    {
        var buffer = new ArrayBufferWriter<byte>();
        using var json = new Utf8JsonWriter(buffer, EventForm.JsonOptions);
        EventForm.Write(json, next, next is SeriesRecorded series ? SeriesContent.Of(series.Points) : null);
        json.Flush();
        return Encoding.UTF8.GetString(buffer.WrittenSpan);
    }

    private static IEnumerable<JsonElement> Numbers(JsonElement element) => element.ValueKind switch
    {
        JsonValueKind.Number => [element],
        JsonValueKind.Object => element.EnumerateObject().SelectMany(field => Numbers(field.Value)),
        JsonValueKind.Array => element.EnumerateArray().SelectMany(Numbers),
        _ => [],
    };
}
