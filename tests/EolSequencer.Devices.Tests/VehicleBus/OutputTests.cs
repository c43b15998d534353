using EolSequencer.Devices.Tests.Kit;
using EolSequencer.Model.Devices;
using EolSequencer.Model.Judging;
using EolSequencer.Model.Units;
using EolSequencer.Model.Values;

namespace EolSequencer.Devices.Tests.VehicleBus;

/// <summary>Outputs taken over and given back (ISO 14229-1, service 2F); one that is forgotten stays on in a customer's car park.</summary>
public class OutputTests
{
    private static readonly ActionDescription Lamp = Describe.Control("gateway", Describe.YesNo, ("fog", 0x2220), ("plate", 0x2221));
    private static readonly ActionDescription Blower = Describe.Control("brakes", Describe.Number(8, 0.5m, "%"), ("", 0x2250));
    private static readonly ActionDescription DoorLamp = Describe.Control(null, Describe.YesNo, ("", 0x2260));
    private static readonly ActionDescription ReturnAll = Describe.Act(null, ServiceAct.ReturnControl);

    private readonly BusBench _bench = new();

    [Fact]
    public void An_indexed_output_is_set_at_its_own_identifier()
    {
        _bench.Bus.When("710#052F22200301", 2, "718#056F22200301");
        var reading = _bench.Act(Lamp, TruthValue.Yes, "fog");
        Assert.Equal((null, null, "6F22200301"), (reading.Missing, reading.Value, Convert.ToHexString(reading.Raw.Span)));
    }

    [Fact]
    public void A_quantity_becomes_the_nearest_step()
    {
        _bench.Bus.When("713#052F2250034B", 2, "71B#056F2250034B");
        Assert.Null(_bench.Act(Blower, new NumberValue(37.6m, UnitTable.Required("%"))).Missing);
    }

    [Fact]
    public void An_index_may_name_the_unit()
    {
        _bench.Bus.When("713#052F22600301", 2, "71B#056F22600301");
        Assert.Null(_bench.Act(DoorLamp, TruthValue.Yes, "brakes").Missing);
    }

    [Fact]
    public void A_value_beyond_the_output_is_refused_before_anything_is_sent()
    {
        var reading = _bench.Act(Blower, new NumberValue(128, UnitTable.Required("%")));
        Assert.Equal((MissingCause.Refused, "action: 128 % is beyond the range of 8 bits"), (reading.Missing, reading.Detail));
        Assert.Empty(_bench.Bus.Sent);
    }

    [Fact]
    public void Only_what_was_taken_over_is_given_back_in_that_order_and_once()
    {
        Answer("710", "718", "2221", "03");
        Answer("713", "71B", "2250", "03");
        _bench.Act(Lamp, TruthValue.Yes, "plate");
        _bench.Act(Blower, new NumberValue(10, UnitTable.Required("%")));
        _bench.Bus.Sent.Clear();

        Answer("710", "718", "2221", "00");
        Answer("713", "71B", "2250", "00");
        Assert.Null(_bench.Act(ReturnAll).Missing);
        Assert.Equal(["710#042F222100CCCCCC", "713#042F225000CCCCCC"], _bench.Bus.Sent.Select(sent => sent.Frame));

        Assert.Null(_bench.Act(ReturnAll).Missing);
        Assert.Equal(2, _bench.Bus.Sent.Count);
    }

    [Fact]
    public void What_was_refused_is_not_given_back()
    {
        _bench.Bus.When("710#052F22200301", 2, "718#037F2F22");
        Assert.Equal(MissingCause.Refused, _bench.Act(Lamp, TruthValue.Yes, "fog").Missing);
        Assert.Null(_bench.Act(ReturnAll).Missing);
        Assert.Single(_bench.Bus.Sent);
    }

    [Fact]
    public void An_output_whose_confirmation_was_lost_is_given_back_all_the_same()
    {
        Assert.Equal(MissingCause.Silent, _bench.Act(Lamp, TruthValue.Yes, "fog").Missing);
        Answer("710", "718", "2220", "00");
        Assert.Null(_bench.Act(ReturnAll).Missing);
        Assert.Equal("710#042F222000CCCCCC", _bench.Bus.Sent[^1].Frame);
    }

    [Fact]
    public void One_that_cannot_be_given_back_does_not_keep_the_others()
    {
        Answer("710", "718", "2220", "03");
        Answer("713", "71B", "2250", "03");
        _bench.Act(Lamp, TruthValue.Yes, "fog");
        _bench.Act(Blower, new NumberValue(10, UnitTable.Required("%")));

        Answer("713", "71B", "2250", "00");
        var reading = _bench.Act(ReturnAll);
        Assert.Equal((MissingCause.Silent, "gateway: 2F222000: no answer within P2 (100 ms)"), (reading.Missing, reading.Detail));
        Assert.Equal("713#042F225000CCCCCC", _bench.Bus.Sent[^1].Frame);
    }

    [Fact]
    public void One_unit_alone_can_be_given_back()
    {
        Answer("710", "718", "2220", "03");
        Answer("713", "71B", "2250", "03");
        _bench.Act(Lamp, TruthValue.Yes, "fog");
        _bench.Act(Blower, new NumberValue(10, UnitTable.Required("%")));
        _bench.Bus.Sent.Clear();

        Answer("713", "71B", "2250", "00");
        Assert.Null(_bench.Act(Describe.Act("brakes", ServiceAct.ReturnControl)).Missing);
        Assert.Equal(["713#042F225000CCCCCC"], _bench.Bus.Sent.Select(sent => sent.Frame));
    }

    [Theory]
    [InlineData(ServiceAct.DefaultSession, "021001", "065001003201F4")]
    [InlineData(ServiceAct.Reset, "021101", "025101")]
    public void Outputs_that_fell_back_with_the_session_are_not_given_back_again(ServiceAct act, string request, string answer)
    {
        Answer("710", "718", "2220", "03");
        _bench.Act(Lamp, TruthValue.Yes, "fog");
        _bench.Bus.When($"710#{request}", 2, $"718#{answer}");
        _bench.Act(Describe.Act("gateway", act));
        _bench.Bus.Sent.Clear();
        Assert.Null(_bench.Act(ReturnAll).Missing);
        Assert.Empty(_bench.Bus.Sent);
    }

    private void Answer(string request, string response, string identifier, string parameter) =>
        _bench.Bus.When($"{request}#0{(parameter == "03" ? 5 : 4)}2F{identifier}{parameter}", 2, $"{response}#046F{identifier}{parameter}");
}
