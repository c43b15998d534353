using EolSequencer.Devices.Tests.Kit;
using EolSequencer.Model.Devices;
using EolSequencer.Model.Judging;

namespace EolSequencer.Devices.Tests.VehicleBus;

/// <summary>Values out of data identifiers and routine results (ISO 14229-1, services 22 and 31 03), byte by byte.</summary>
public class RecordReadingTests
{
    private static readonly ChannelDescription LampFeed = Describe.Data("gateway", 0x2104, Describe.Number(16, 0.01m, "A"));

    private static readonly ChannelDescription TyrePressure = Describe.Data(
        "gateway", 0x2120, Describe.Number(16, 0.1m, "kPa"), Describe.Bits(("fl", 0, 16), ("fr", 16, 16), ("rl", 32, 16), ("rr", 48, 16)));

    private static readonly ChannelDescription Software = Describe.Data(null, 0xF195, Describe.Text(4));

    private readonly BusBench _bench = new();

    [Fact]
    public void A_data_identifier_gives_value_bytes_and_moment_of_arrival()
    {
        _bench.Bus.When("710#03222104", 3, "718#0562210404D2CCCC");
        var reading = _bench.Read(LampFeed);
        Assert.Equal(("12.34 A", "62210404D2", 3.25), (reading.Value!.ToString(), Convert.ToHexString(reading.Raw.Span), TimeSpan.FromTicks(reading.Stamp).TotalMilliseconds));
    }

    [Fact]
    public void All_indexes_in_one_record_cost_one_exchange()
    {
        _bench.Bus.When("710#03222120", 3, "718#100B622120096009").When("710#30", 1, "718#2162096409660000");
        var readings = _bench.ReadEach(TyrePressure, "fl", "fr", "rl", "rr");
        Assert.Equal(["240.0 kPa", "240.2 kPa", "240.4 kPa", "240.6 kPa"], readings.Select(reading => reading.Value!.ToString()));
        Assert.Equal(["710#03222120CCCCCCCC", "710#300000CCCCCCCCCC"], _bench.Bus.SentTo("710"));
    }

    [Fact]
    public void One_index_of_a_record_lies_where_its_bits_say()
    {
        _bench.Bus.When("710#03222120", 3, "718#100B622120096009").When("710#30", 1, "718#2162096409660000");
        Assert.Equal("240.4 kPa", _bench.Read(TyrePressure, "rl").Value!.ToString());
    }

    [Fact]
    public void An_index_that_names_the_unit_asks_each_unit()
    {
        _bench.Bus.When("710#0322F195", 2, "718#0762F19541303031").When("713#0322F195", 2, "71B#0762F19542303032");
        var readings = _bench.ReadEach(Software, "gateway", "brakes");
        Assert.Equal(["A001", "B002"], readings.Select(reading => reading.Value!.ToString()));
    }

    [Fact]
    public void A_silent_unit_leaves_the_readings_of_the_others()
    {
        _bench.Bus.When("713#0322F195", 2, "71B#0762F19542303032");
        var readings = _bench.ReadEach(Software, "gateway", "brakes");
        Assert.Equal((MissingCause.Silent, null), (readings[0].Missing, readings[0].Value));
        Assert.Equal("gateway: 22F195: no answer within P2 (100 ms)", readings[0].Detail);
        Assert.Equal("B002", readings[1].Value!.ToString());
    }

    [Fact]
    public void A_refusal_names_the_code_and_keeps_its_bytes()
    {
        _bench.Bus.When("710#03222104", 3, "718#037F223100000000");
        var reading = _bench.Read(LampFeed);
        Assert.Equal((MissingCause.Refused, "gateway: 222104: 31 requestOutOfRange"), (reading.Missing, reading.Detail));
        Assert.Equal("7F2231", Convert.ToHexString(reading.Raw.Span));
    }

    [Fact]
    public void A_record_shorter_than_its_form_is_a_short_answer()
    {
        _bench.Bus.When("710#03222104", 3, "718#0462210404");
        var reading = _bench.Read(LampFeed);
        Assert.Equal((MissingCause.ShortAnswer, "gateway: 222104: short answer (1 of 2 bytes)"), (reading.Missing, reading.Detail));
    }

    [Fact]
    public void A_value_the_unit_calls_invalid_is_missing_with_its_bytes()
    {
        var form = Describe.Number(16) with { Invalid = [0xFFFF] };
        _bench.Bus.When("710#03222104", 3, "718#05622104FFFF");
        var reading = _bench.Read(Describe.Data("gateway", 0x2104, form));
        Assert.Equal((MissingCause.InvalidMarker, "622104FFFF"), (reading.Missing, Convert.ToHexString(reading.Raw.Span)));
    }

    [Theory]
    [InlineData("done", 0, "yes")]
    [InlineData("good", 1, "no")]
    public void Bits_of_a_routine_result_count_from_behind_its_identifier(string name, int bit, string expected)
    {
        var channel = Describe.Channel(new ChannelSource.RoutineResult("brakes", 0x0301, Describe.Bits(("", bit, 1)), Describe.YesNo)) with { Name = name };
        _bench.Bus.When("713#0431030301", 3, "71B#057103030101");
        Assert.Equal(expected, _bench.Read(channel).Value!.ToString());
    }

    [Fact]
    public void All_indexes_of_a_routine_result_cost_one_exchange()
    {
        var channel = Describe.Channel(new ChannelSource.RoutineResult("brakes", 0x0301, Describe.Bits(("done", 0, 1), ("good", 1, 1)), Describe.YesNo));
        _bench.Bus.When("713#0431030301", 3, "71B#057103030103");
        Assert.Equal(["yes", "yes"], _bench.ReadEach(channel, "done", "good").Select(reading => reading.Value!.ToString()));
        Assert.Single(_bench.Bus.SentTo("713"));
    }

    [Fact]
    public void A_poll_keeps_to_its_interval_however_long_the_exchanges_take()
    {
        _bench.Bus.Always("710#03222104", 7, "718#0562210404D2");
        var log = _bench.Watch(LampFeed, everyMs: 20);
        _bench.Pass(90);
        log.Subscription!.Dispose();
        _bench.Pass(100);
        Assert.Equal(["7.25: 12.34 A", "27.25: 12.34 A", "47.25: 12.34 A", "67.25: 12.34 A", "87.25: 12.34 A"], log.Lines);
    }

    [Fact]
    public void A_poll_says_once_that_the_unit_has_fallen_silent_and_goes_on_when_it_is_back()
    {
        _bench.Bus.When("710#03222104", 5, "718#0562210404D2");
        var log = _bench.Watch(LampFeed, everyMs: 50);
        _bench.Pass(390);
        _bench.Bus.Always("710#03222104", 5, "718#0562210404D3");
        _bench.Pass(400);
        log.Subscription!.Dispose();
        Assert.Equal(["5.25: 12.34 A", "150.25: silent"], log.Lines[..2]);
        Assert.All(log.Lines[2..], line => Assert.EndsWith("12.35 A", line, StringComparison.Ordinal));
        Assert.NotEmpty(log.Lines[2..]);
    }
}
