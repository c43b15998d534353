using EolSequencer.Devices.Tests.Kit;
using EolSequencer.Model.Devices;
using EolSequencer.Model.Values;

namespace EolSequencer.Devices.Tests.VehicleBus;

/// <summary>A caller may give up in every wait there is; it is told at once, and the next request of the same unit works.</summary>
public class CancelTests
{
    private static readonly ChannelDescription Part = Describe.Data("powertrain", 0xF187, Describe.Number(8));
    private static readonly ChannelDescription Speed = Describe.Channel(new ChannelSource.Obd(0x0D));
    private static readonly ChannelDescription Signal = Describe.Signal(0x1A0, 0, 1, cycleMs: 1000);
    private static readonly ActionDescription Write = Describe.Action(new ActionSource.Write("powertrain", 0xF190, Describe.Text(20), AccessLevel: 0));

    private readonly BusBench _bench = new();

    [Theory]
    [InlineData("a frame that nobody acknowledges", 400)]
    [InlineData("the first frame of the answer", 40)]
    [InlineData("the rest of the answer", 400)]
    [InlineData("the answer after pending", 3000)]
    [InlineData("the pause before a busy unit is asked again", 50)]
    [InlineData("the flow control of a long request", 400)]
    [InlineData("the gap between two frames of a long request", 60)]
    [InlineData("an answer of any unit", 40)]
    [InlineData("a broadcast frame", 700)]
    [InlineData("the turn behind another request", 2000)]
    public void Whoever_gives_up_is_told_at_once_and_the_next_request_works(string waitingFor, double afterMs)
    {
        var work = Begin(waitingFor);
        _bench.Time.Run(async () =>
        {
            using var limit = new CancellationTokenSource(TimeSpan.FromMilliseconds(afterMs), _bench.Time);
            await Assert.ThrowsAnyAsync<OperationCanceledException>(() => work(limit.Token).AsTask());
        });
        Assert.Equal(afterMs, _bench.NowMs, 3);

        _bench.Bus.AcknowledgedFrames = int.MaxValue;
        _bench.Pass(6000);
        _bench.Bus.When("7E0#03222104", 2, "7E8#0462210407");
        Assert.Equal("7", _bench.Read(Describe.Data("powertrain", 0x2104, Describe.Number(8))).Value!.ToString());
    }

    [Fact]
    public void A_call_that_is_given_up_before_it_begins_sends_nothing()
    {
        _bench.Time.Run(async () =>
        {
            var given = new CancellationToken(canceled: true);
            await Assert.ThrowsAnyAsync<OperationCanceledException>(() => _bench.Device.ReadAsync(_bench.Request(Part, null), given).AsTask());
        });
        _bench.Pass(100);
        Assert.Empty(_bench.Bus.Sent);
    }

    private Func<CancellationToken, ValueTask<Model.Ports.Reading>> Begin(string waitingFor)
    {
        switch (waitingFor)
        {
            case "a frame that nobody acknowledges":
                _bench.Bus.AcknowledgedFrames = 0;
                return Read(Part);
            case "the rest of the answer":
                _bench.Bus.When("7E0#0322F187", 5, "7E8#101162F187414243");
                return Read(Part);
            case "the answer after pending":
                _bench.Bus.When("7E0#0322F187", 5, "7E8#037F2278");
                return Read(Part);
            case "the pause before a busy unit is asked again":
                _bench.Bus.When("7E0#0322F187", 5, "7E8#037F2221");
                return Read(Part);
            case "the flow control of a long request":
                return Act;
            case "the gap between two frames of a long request":
                _bench.Bus.When("7E0#10", 5, "7E8#30007F");
                return Act;
            case "an answer of any unit":
                return Read(Speed);
            case "a broadcast frame":
                return Read(Signal);
            case "the turn behind another request":
                _bench.Bus.When("7E0#0322F187", 5, "7E8#037F2278");
                return async cancel =>
                {
                    using var other = new CancellationTokenSource(TimeSpan.FromMilliseconds(4000), _bench.Time);
                    _ = _bench.Device.ReadAsync(_bench.Request(Part, null), other.Token).AsTask();
                    return await _bench.Device.ReadAsync(_bench.Request(Speed, null), cancel);
                };
            default:
                return Read(Part);
        }
    }

    private Func<CancellationToken, ValueTask<Model.Ports.Reading>> Read(ChannelDescription channel) =>
        cancel => _bench.Device.ReadAsync(_bench.Request(channel, null), cancel);

    private ValueTask<Model.Ports.Reading> Act(CancellationToken cancel) => _bench.Device.ActAsync(
        new Model.Ports.ActionRequest(Write, null, new TextValue("TESTVXN06AA000010XYZ"), new Dictionary<string, Value>()), cancel);
}
