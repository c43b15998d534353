using System.Text;
using EolSequencer.Simulators.Outside;
using EolSequencer.Simulators.Time;

namespace EolSequencer.Simulators.Tests.Outside;

/// <summary>A tester from outside meets an interface that behaves as the documented ones do, refusals included.</summary>
public sealed class SerialCanInterfaceTests : IDisposable
{
    private readonly VirtualTime _time;
    private readonly SimulatedVehicle _vehicle;
    private readonly SerialCanInterface _interface;
    private readonly StringBuilder _written = new();

    public SerialCanInterfaceTests()
    {
        (_time, _vehicle) = Vans.New();
        _interface = new SerialCanInterface(_vehicle, bytes => _written.Append(Encoding.ASCII.GetString(bytes)));
    }

    public void Dispose() => _interface.Dispose();

    [Fact]
    public void Commands_are_done_in_their_order_and_refused_out_of_it()
    {
        Assert.Equal("\a", Say("O"));
        Assert.Equal("\a", Say("C"));
        Assert.Equal("\a", Say("t7E0102"));
        Assert.Equal("\r", Say("S6"));
        Assert.Equal("\r", Say("O", ms: 0));
        Assert.True(_interface.IsOpen);
        Assert.EndsWith("\a", Say("O", ms: 0), StringComparison.Ordinal);
        Assert.EndsWith("\a", Say("S5", ms: 0), StringComparison.Ordinal);
        Assert.EndsWith("\r", Say("C", ms: 0), StringComparison.Ordinal);
        Assert.Equal("", Say("", ms: 0)[..^1]);
        Assert.Equal("\a", Say("X", ms: 0));
        Assert.Equal("V0100\r", Say("V", ms: 0));
        Assert.Equal("", Pass(200));
    }

    [Fact]
    public void A_request_is_confirmed_and_answered_among_the_frames_of_the_bus()
    {
        Open();
        var heard = Say("t710803221001CCCCCCCC", ms: 40);
        var lines = heard.Split('\r');
        Assert.Contains("z", lines);
        Assert.Contains(lines, line => line.StartsWith("t718", StringComparison.Ordinal));
        Assert.Contains(lines, line => line.StartsWith("t1A0", StringComparison.Ordinal));
    }

    [Fact]
    public void Every_repeat_of_a_cyclic_frame_comes()
    {
        Open();
        var count = Pass(1000).Split('\r').Count(line => line.StartsWith("t1A0", StringComparison.Ordinal));
        Assert.InRange(count, 9, 101);
    }

    [Fact]
    public void More_frames_than_fit_its_queue_are_refused()
    {
        Open();
        var heard = Say(string.Join('\r', Enumerable.Repeat("t7E0102", SerialCanInterface.QueueLength + 3)), ms: 0);
        Assert.Equal(3, heard.Count(one => one == '\a'));
        Assert.Equal(SerialCanInterface.QueueLength, Pass(50).Split('\r').Count(line => line == "z"));
    }

    [Fact]
    public void At_another_speed_nothing_is_heard_and_nothing_goes_out()
    {
        Say("S4");
        Say("O");
        Assert.Equal("", Say("t7E0102", ms: 500));
    }

    [Fact]
    public void Bus_off_and_the_return_are_told()
    {
        Open();
        _vehicle.Tester.Change(Wire.Can.LinkState.BusOff);
        Assert.EndsWith("sb000256\r", Pass(0), StringComparison.Ordinal);
        Assert.Equal("", Pass(100));
        _vehicle.Tester.Change(Wire.Can.LinkState.Up);
        Assert.StartsWith("sa000000\r", Pass(0), StringComparison.Ordinal);
    }

    private void Open()
    {
        Say("S6");
        Say("O", ms: 0);
    }

    private string Say(string line, double ms = 5)
    {
        _interface.Take(Encoding.ASCII.GetBytes(line + "\r"));
        return Pass(ms);
    }

    private string Pass(double ms)
    {
        if (ms > 0) _time.Advance(TimeSpan.FromMilliseconds(ms));
        var written = _written.ToString();
        _written.Clear();
        return written;
    }
}
