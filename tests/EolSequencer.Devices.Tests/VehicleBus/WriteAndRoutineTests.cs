using EolSequencer.Devices.Tests.Kit;
using EolSequencer.Devices.VehicleBus;
using EolSequencer.Model.Devices;
using EolSequencer.Model.Judging;
using EolSequencer.Model.Values;

namespace EolSequencer.Devices.Tests.VehicleBus;

/// <summary>Writing behind a security level and starting routines (ISO 14229-1, services 27, 2E, 31).</summary>
public class WriteAndRoutineTests
{
    private static readonly ActionDescription WriteCoding = Describe.Action(new ActionSource.Write("gateway", 0x2108, Describe.Text(4), AccessLevel: 3));
    private static readonly ActionDescription WriteOpen = Describe.Action(new ActionSource.Write("gateway", 0x2108, Describe.Text(4), AccessLevel: 0));
    private static readonly ActionDescription SelfTest = Describe.Action(new ActionSource.Routine("brakes", 0x0301, Describe.Number(8)));

    private readonly BusBench _bench = new(keys: new Complement());

    /// <summary>A key for the tests: each bit of the seed turned round, for level 3 only.</summary>
    private sealed class Complement : IKeyAlgorithm
    {
        public byte[]? KeyOf(string unit, byte level, ReadOnlySpan<byte> seed)
        {
            if (level != 3) return null;
            var key = seed.ToArray();
            for (var at = 0; at < key.Length; at++) key[at] = (byte)~key[at];
            return key;
        }
    }

    [Fact]
    public void A_level_is_opened_with_the_key_of_its_seed_before_writing()
    {
        _bench.Bus.When("710#022703", 2, "718#04670312F0").When("710#042704ED0F", 2, "718#026704").When("710#072E210841422020", 2, "718#036E2108");
        Assert.Null(_bench.Act(WriteCoding, new TextValue("AB")).Missing);
        Assert.Equal(3, _bench.Bus.Sent.Count);
    }

    [Fact, Trait("case", "UDS-05")]
    public void A_seed_of_zeros_means_open_and_no_key_is_sent()
    {
        _bench.Bus.When("710#022703", 2, "718#06670300000000").When("710#072E210841422020", 2, "718#036E2108");
        Assert.Null(_bench.Act(WriteCoding, new TextValue("AB")).Missing);
        Assert.Equal(["710#022703CCCCCCCCCC", "710#072E210841422020"], _bench.Bus.Sent.Select(sent => sent.Frame));
    }

    [Fact, Trait("case", "UDS-05")]
    public void A_seed_with_a_broken_echo_never_counts_as_open()
    {
        _bench.Bus.When("710#022703", 2, "718#06670000000000");
        var reading = _bench.Act(WriteCoding, new TextValue("AB"));
        Assert.Equal(MissingCause.Silent, reading.Missing);
        Assert.Equal("gateway: 2703: no answer within P2 (100 ms); 1 x something else, the last 670000000000", reading.Detail);
        Assert.Single(_bench.Bus.Sent);
    }

    [Fact]
    public void A_refused_key_ends_the_write()
    {
        _bench.Bus.When("710#022703", 2, "718#04670312F0").When("710#042704ED0F", 2, "718#037F2735");
        var reading = _bench.Act(WriteCoding, new TextValue("AB"));
        Assert.Equal((MissingCause.Refused, "gateway: 2704ED0F: 35 invalidKey"), (reading.Missing, reading.Detail));
    }

    [Fact]
    public void A_level_without_a_key_is_the_stations_refusal()
    {
        var level5 = Describe.Action(new ActionSource.Write("gateway", 0x2108, Describe.Text(4), AccessLevel: 5));
        _bench.Bus.When("710#022705", 2, "718#04670512F0");
        var reading = _bench.Act(level5, new TextValue("AB"));
        Assert.Equal((MissingCause.Refused, "gateway: the station has no key for security level 5"), (reading.Missing, reading.Detail));
    }

    [Fact]
    public void A_station_without_keys_says_so()
    {
        var bench = new BusBench();
        bench.Bus.When("710#022703", 2, "718#04670312F0");
        Assert.Equal("gateway: the station has no key for security level 3", bench.Act(WriteCoding, new TextValue("AB")).Detail);
    }

    [Fact]
    public void A_seed_without_bytes_is_a_short_answer()
    {
        _bench.Bus.When("710#022703", 2, "718#026703");
        Assert.Equal(MissingCause.ShortAnswer, _bench.Act(WriteCoding, new TextValue("AB")).Missing);
    }

    [Fact]
    public void Without_a_level_nothing_is_opened()
    {
        _bench.Bus.When("710#072E210841424344", 2, "718#036E2108");
        Assert.Null(_bench.Act(WriteOpen, new TextValue("ABCD")).Missing);
        Assert.Single(_bench.Bus.Sent);
    }

    [Fact]
    public void A_text_too_long_is_refused_before_anything_is_sent()
    {
        Assert.Equal("action: 'ABCDE' does not fit into 4 ASCII characters", _bench.Act(WriteOpen, new TextValue("ABCDE")).Detail);
        Assert.Empty(_bench.Bus.Sent);
    }

    [Fact]
    public void A_routine_gives_its_first_result()
    {
        _bench.Bus.When("713#0431010301", 3, "71B#037F3178");
        _bench.Bus.Give("71B#057101030107", 3000);
        Assert.Equal("7", _bench.Act(SelfTest).Value!.ToString());
        Assert.Equal(3000, _bench.NowMs, 3);
    }

    [Fact]
    public void A_routine_without_its_result_is_a_short_answer()
    {
        _bench.Bus.When("713#0431010301", 3, "71B#0471010301");
        var reading = _bench.Act(SelfTest);
        Assert.Equal((MissingCause.ShortAnswer, "brakes: short answer (0 of 1 bytes)"), (reading.Missing, reading.Detail));
    }

    [Fact]
    public void A_routine_that_returns_nothing_is_confirmed()
    {
        var pump = Describe.Action(new ActionSource.Routine(null, 0x0301, null));
        _bench.Bus.When("713#0431010301", 3, "71B#0471010301");
        var reading = _bench.Act(pump, index: "brakes");
        Assert.Equal((null, null), (reading.Missing, reading.Value));
    }
}
