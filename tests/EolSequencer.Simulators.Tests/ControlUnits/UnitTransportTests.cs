using EolSequencer.Simulators.Tests.Bus;
using EolSequencer.Simulators.Time;
using EolSequencer.Wire.Can;
using EolSequencer.Wire.IsoTp;

namespace EolSequencer.Simulators.Tests.ControlUnits;

/// <summary>The units' side of ISO 15765-2, frame by frame, so that both sides of a transfer are held to the standard.</summary>
public sealed class UnitTransportTests
{
    private readonly VirtualTime _time;
    private readonly SimulatedVehicle _vehicle;
    private readonly HeardFrames _heard = new();

    public UnitTransportTests()
    {
        (_time, _vehicle) = Vans.New();
        _vehicle.Port.Listen(CanId.Base(0x718), _heard, Repeats.All);
    }

    [Fact]
    public void A_long_answer_waits_for_flow_control_and_then_comes_whole()
    {
        Send("0322F190CCCCCCCC");
        Pass(50);
        Assert.Equal(["718#101462F190202020"], Taken());
        Send("300000");
        Pass(50);
        Assert.Equal(["718#2120202020202020", "718#2220202020202020"], Taken().Select(frame => frame[..20]));
    }

    [Fact]
    public void Block_size_and_separation_time_are_kept()
    {
        Send("0322F190CCCCCCCC");
        Pass(50);
        Send("300114"); // one frame, then ask again; 20 ms
        Pass(500);
        Assert.Equal(2, Taken().Count);
        Send("300014");
        Pass(50);
        Assert.Equal(["718#22"], Taken().Select(frame => frame[..6]));
    }

    [Fact]
    public void Separation_time_lies_between_consecutive_frames()
    {
        Send("0722F190F187F195"); // three identifiers: more than two consecutive frames
        Pass(50);
        Send("300014");
        Pass(500);
        var times = _heard.Frames.Skip(1).Select(frame => frame.At).ToArray();
        Assert.True(times.Length > 3);
        Assert.All(times.Zip(times.Skip(1)), pair => Assert.InRange(pair.Second - pair.First, 20.Ms, 21.Ms));
    }

    [Fact]
    public void Without_flow_control_the_answer_is_given_up_after_N_Bs()
    {
        Send("0322F190CCCCCCCC");
        Pass(1_100);
        Send("300000"); // too late
        Pass(100);
        Assert.Single(Taken());
        Send("023E00CCCCCCCCCC");
        Pass(100);
        Assert.Equal(["718#027E00AAAAAAAAAA"], Taken());
    }

    [Fact]
    public void A_long_request_is_asked_for_and_taken()
    {
        Send("021003CCCCCCCCCC");
        Pass(100);
        Taken();
        Send("100B2E2108414243");
        Pass(10);
        Assert.Equal(["718#300000AAAAAAAAAA"], Taken());
        Send("214445464748CCCC");
        Pass(300);
        Assert.Equal(["718#037F2E78AAAAAAAA", "718#037F2E33AAAAAAAA"], Taken()); // locked, but understood
    }

    [Fact]
    public void A_gap_in_the_sequence_ends_the_reception_without_an_answer()
    {
        Send("100B2E2108414243");
        Pass(10);
        Send("224445464748CCCC");
        Pass(300);
        Assert.Single(Taken());
    }

    [Theory]
    [InlineData("1007010203040506")] // fits into a single frame: ISO 15765-2, 9.6.3.2
    [InlineData("10001")]            // shorter than a frame
    [InlineData("0011223344556677")]
    [InlineData("4000000000000000")]
    public void A_malformed_beginning_is_ignored(string data)
    {
        Send(data.Length % 2 == 0 ? data : data + "0");
        Pass(1_200);
        Assert.Empty(Taken());
    }

    [Fact]
    public void A_first_frame_to_all_is_ignored()
    {
        _vehicle.Port.SendAsync(CanFrame.Parse("7DF#100B2E2108414243"), default);
        Pass(1_200);
        Assert.Empty(Taken());
    }

    [Fact]
    public void Answers_of_two_units_interleave_without_disturbing_each_other()
    {
        var gateway = new ScriptedTester(_time, _vehicle.Port, 0x710, 0x718, new TransportOptions { SeparationTime = 5 });
        var brakes = new ScriptedTester(_time, _vehicle.Port, 0x713, 0x71B, new TransportOptions { SeparationTime = 5 });
        gateway.Send("22F190F195");
        brakes.Send("22F190F195");
        Pass(500);
        Assert.Equal("62F190" + string.Concat(Enumerable.Repeat("20", 17)) + "F195475732363034313730313030", Assert.Single(gateway.Heard).Message);
        Assert.Equal("62F190" + string.Concat(Enumerable.Repeat("20", 17)) + "F195425232363033303230323030", Assert.Single(brakes.Heard).Message);
    }

    private void Send(string data) => _vehicle.Port.SendAsync(CanFrame.Parse("710#" + data), default);

    private void Pass(int ms) => _time.Advance(ms.Ms);

    private List<string> Taken()
    {
        var frames = _heard.Frames.Select(frame => frame.Frame).ToList();
        _heard.Frames.Clear();
        return frames;
    }
}
