using EolSequencer.Devices.Tests.Kit;
using EolSequencer.Model.Devices;
using EolSequencer.Model.Judging;
using EolSequencer.Wire.Can;

namespace EolSequencer.Devices.Tests.VehicleBus;

/// <summary>Trouble codes and presence of one unit and of all fitted ones (ISO 14229-1, services 19 and 3E).</summary>
public class ServiceReadingTests
{
    private static readonly ChannelDescription AllCodes = Describe.Channel(new ChannelSource.Service(null, ServiceRead.StoredTroubleCodes, 0x08));
    private static readonly ChannelDescription BrakeCodes = Describe.Channel(new ChannelSource.Service("brakes", ServiceRead.StoredTroubleCodes, 0x08));
    private static readonly ChannelDescription AllAwake = Describe.Channel(new ChannelSource.Service(null, ServiceRead.Presence, 0));
    private static readonly ChannelDescription Awake = Describe.Channel(new ChannelSource.Service(null, ServiceRead.Presence, 0)) with { Name = "awake" };

    private readonly BusBench _bench = new();

    [Fact]
    public void Codes_of_all_units_stand_in_one_list_each_with_its_unit_in_front()
    {
        _bench.Bus
            .When("710#03190208", 2, "718#035902FF")
            .When("713#03190208", 2, "71B#075902FF40350008")
            .When("7E0#03190208", 2, "7E8#100B5902FF042011").When("7E0#30", 1, "7E8#210801271A08")
            .When("7E1#03190208", 2, "7E9#035902FF");
        var reading = _bench.Read(AllCodes);
        Assert.Equal("[brakes:C0035, powertrain:P0420-11, powertrain:P0127-1A]", reading.Value!.ToString());
        Assert.Equal("5902FF" + "5902FF40350008" + "5902FF0420110801271A08" + "5902FF", Convert.ToHexString(reading.Raw.Span));
    }

    [Fact]
    public void Codes_of_one_unit_need_no_name()
    {
        _bench.Bus.When("713#03190208", 2, "71B#075902FF40350008");
        Assert.Equal("[C0035]", _bench.Read(BrakeCodes).Value!.ToString());
    }

    [Fact]
    public void No_codes_is_a_list_without_entries_and_not_a_missing_one()
    {
        _bench.Bus.When("713#03190208", 2, "71B#035902FF");
        Assert.Equal("[]", _bench.Read(BrakeCodes).Value!.ToString());
    }

    [Fact]
    public void One_silent_unit_leaves_no_list_that_could_pass_as_whole()
    {
        _bench.Bus.When("710#03190208", 2, "718#035902FF");
        var reading = _bench.Read(AllCodes);
        Assert.Equal((MissingCause.Silent, "brakes: 190208: no answer within P2 (100 ms)"), (reading.Missing, reading.Detail));
    }

    [Fact]
    public void Half_a_code_is_a_short_answer()
    {
        _bench.Bus.When("713#03190208", 2, "71B#055902FF4035");
        Assert.Equal(MissingCause.ShortAnswer, _bench.Read(BrakeCodes).Missing);
    }

    [Fact]
    public void All_are_awake_when_each_has_answered_and_a_refusal_is_an_answer()
    {
        _bench.Bus.When("710#023E00", 2, "718#027E00").When("713#023E00", 2, "71B#037F3E7F").When("7E0#023E00", 2, "7E8#027E00").When("7E1#023E00", 2, "7E9#027E00");
        Assert.Equal("yes", _bench.Read(AllAwake).Value!.ToString());
        Assert.Equal(4, _bench.Bus.Sent.Count);
    }

    [Fact]
    public void One_that_sleeps_is_named()
    {
        _bench.Bus.When("710#023E00", 2, "718#027E00");
        var reading = _bench.Read(AllAwake);
        Assert.Equal(("no", "brakes: 3E00: no answer within P2 (100 ms)"), (reading.Value!.ToString(), reading.Detail));
    }

    [Fact]
    public void Presence_by_index_tells_each_unit()
    {
        _bench.Bus.When("710#023E00", 2, "718#027E00");
        Assert.Equal(["yes", "no"], _bench.ReadEach(Awake, "gateway", "brakes").Select(reading => reading.Value!.ToString()));
    }

    [Fact]
    public void Nobody_is_called_asleep_over_a_lost_link()
    {
        _bench.Time.At(TimeSpan.FromMilliseconds(20), () => _bench.Bus.Change(LinkState.BusOff));
        Assert.Equal(MissingCause.LinkDown, _bench.Read(AllAwake).Missing);
    }
}
