using EolSequencer.Devices.Diagnostics;
using EolSequencer.Devices.Tests.Kit;
using EolSequencer.Devices.Transport;
using EolSequencer.Devices.VehicleBus;
using EolSequencer.Model.Judging;
using EolSequencer.Model.Vehicles;
using EolSequencer.Simulators.Time;
using EolSequencer.Wire.Can;
using EolSequencer.Wire.IsoTp;

namespace EolSequencer.Devices.Tests.Transport;

/// <summary>The shell around the ISO-TP state machines: queues that are full, flow controls that crowd, padding, owners of an address (ISO 15765-2).</summary>
public class TransportChannelTests
{
    private readonly VirtualTime _time = new(DateTimeOffset.UnixEpoch);
    private readonly ScriptedBus _bus;

    public TransportChannelTests() => _bus = new ScriptedBus(_time);

    private ExchangeEnd Ask(string request, TransportOptions? options = null)
    {
        var link = new TransportLink(_bus, _time) { Options = options ?? new TransportOptions() };
        using var client = new DiagnosticClient("gateway", link, TransportAddress.Normal(CanId.Base(0x710), CanId.Base(0x718)), new DiagnosticTiming());
        return _time.Run(() => client.RequestAsync(Convert.FromHexString(request), default).AsTask());
    }

    [Fact, Trait("case", "CAN-01")]
    public void A_hundred_frames_wait_for_a_slow_queue_and_go_out_in_order_and_once()
    {
        // 6 bytes in the first frame and 7 in each of 99: 699 bytes.
        _bus.Queueing = TimeSpan.FromMilliseconds(9);
        _bus.When("710#12BB", 1, "718#300000").When("710#2F", 1, "718#036EF190");
        var record = string.Concat(Enumerable.Range(0, 696).Select(at => (at % 251).ToString("X2")));
        Assert.True(Ask("2EF190" + record).IsPositive);
        var consecutive = _bus.Sent.Skip(1).Select(sent => Convert.ToInt32(sent.Frame.Substring(4, 2), 16)).ToList();
        Assert.Equal(Enumerable.Range(1, 99).Select(number => 0x20 | (number & 0xF)), consecutive);
        Assert.Equal("2EF190" + record, string.Concat(_bus.Sent.Select((sent, at) => sent.Frame[(at == 0 ? 8 : 6)..])));
    }

    [Fact, Trait("case", "CAN-01")]
    public void A_queue_that_stays_full_is_a_fault_of_the_link_that_names_the_frame()
    {
        _bus.AcknowledgedFrames = 11;
        _bus.When("710#12BB", 1, "718#300000");
        var end = Ask("2EF190" + new string('0', 1392));
        Assert.Equal(MissingCause.LinkDown, end.Missing);
        Assert.EndsWith("N_TIMEOUT_A: transmit timeout, consecutive frame 11 did not go out", end.Detail, StringComparison.Ordinal);
        Assert.Equal(11, _bus.Sent.Count);
        Assert.InRange(_time.Now.TotalMilliseconds, 1000, 1010);
    }

    [Fact]
    public void Patience_and_leave_to_go_on_in_one_go_are_both_taken()
    {
        _bus.GiveTogether(5, "718#310000", "718#300000");
        _bus.When("710#21", 5, "718#036EF190");
        Assert.True(Ask("2EF19001020304050607").IsPositive);
        Assert.InRange(_time.Now.TotalMilliseconds, 5, 20);
    }

    [Fact]
    public void Leave_to_go_on_before_the_confirmation_of_the_first_frame_is_taken()
    {
        _bus.Queueing = TimeSpan.FromMilliseconds(10);
        _bus.Give("718#300000", 9);
        _bus.When("710#21", 5, "718#036EF190");
        Assert.True(Ask("2EF19001020304050607").IsPositive);
        Assert.InRange(_time.Now.TotalMilliseconds, 20, 30);
    }

    [Theory, Trait("case", "ITP-07")]
    [InlineData(0x00, "710#0210030000000000")]
    [InlineData(0xCC, "710#021003CCCCCCCCCC")]
    [InlineData(null, "710#021003")]
    public void Padding_is_what_the_link_says_zero_included(int? padding, string frame)
    {
        _bus.When("710#021003", 2, "718#065003003201F4AA");
        Assert.Equal("5003003201F4", Convert.ToHexString(Ask("1003", new TransportOptions { Padding = (byte?)padding }).Response.Span));
        Assert.Equal(frame, _bus.Sent[0].Frame);
    }

    [Fact, Trait("case", "ITP-08")]
    public void Two_units_that_answer_on_one_address_are_refused_by_name()
    {
        ControlUnit[] fitted = [new("gateway", 0x710, 0x718, null, null), new("brakes", 0x713, 0x718, null, null)];
        var fault = Assert.Throws<ArgumentException>(() => new VehicleBusDevice("bus", _bus, _time, fitted));
        Assert.Contains("'gateway' and 'brakes' answer on the same identifier 718", fault.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void A_flow_control_that_cannot_go_out_ends_the_reception()
    {
        _bus.AcknowledgedFrames = 1;
        _bus.When("710#0322F190", 2, "718#101462F190313131");
        var end = Ask("22F190");
        Assert.Equal(MissingCause.ShortAnswer, end.Missing);
        Assert.Contains("N_TIMEOUT_A", end.Detail, StringComparison.Ordinal);
        Assert.Equal(1002.25, _time.Now.TotalMilliseconds, 3);
    }

    [Fact]
    public void The_time_for_the_next_frame_counts_from_the_confirmation_of_the_flow_control()
    {
        // Frames at 12.5 ms and at 500 ms; the second flow control is out at 1400 ms, the last frame comes 300 ms later.
        _bus.When("710#0322F190", 2, "718#101662F190313131").When("710#300200", 10, "718#2131313131313131");
        _bus.Give("718#2231313131313131", 500);
        _bus.When("710#300200", 300, "718#2331310000000000");
        _time.At(TimeSpan.FromMilliseconds(5), () => _bus.Queueing = TimeSpan.FromMilliseconds(900));
        Assert.Equal(22, Ask("22F190", new TransportOptions { BlockSize = 2 }).Response.Length);
        Assert.Equal(1700, _time.Now.TotalMilliseconds, 3);
    }

    [Fact, Trait("case", "ITP-02")]
    public void Silence_after_the_second_block_is_noticed_without_traffic()
    {
        _bus.When("710#0322F190", 2, "718#102062F190313131").When("710#300200", 2, "718#2131313131313131", "718#2231313131313131");
        var end = Ask("22F190", new TransportOptions { BlockSize = 2 });
        Assert.Contains("consecutive frame 3", end.Detail, StringComparison.Ordinal);
        Assert.InRange(_time.Now.TotalMilliseconds, 1000, 1100);
    }
}
