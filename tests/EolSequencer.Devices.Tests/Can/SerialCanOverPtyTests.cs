using EolSequencer.Devices.Can;
using EolSequencer.Devices.Tests.Conformance;
using EolSequencer.Devices.Tests.Kit;
using EolSequencer.Model.Judging;
using EolSequencer.Model.Ports;
using EolSequencer.Simulators.Outside;

namespace EolSequencer.Devices.Tests.Can;

/// <summary>The adapter as a station uses it, in real time over a pseudo-terminal, with a simulated vehicle behind it.</summary>
public sealed class SerialCanOverPtyTests : IDisposable
{
    private static readonly (Model.Devices.ChannelDescription Channel, string Value) Software = (Describe.Data("cluster", 0xF195, Describe.Text(12, padding: 0x20)), "FV7-CLU-0518");

    private readonly Cable _cable = new();
    private readonly List<string> _notes = [];

    public void Dispose() => _cable.Dispose();

    [Fact]
    public void A_station_finds_its_units_and_reads() => With(async (device, time) =>
    {
        Assert.Equal("3 of 4 control units answer; silent: tow", (await device.IdentifyAsync(default)).Value?.ToString());
        for (var times = 0; times < 20; times++) Assert.Equal(Software.Value, await ReadAsync(device, time));
        Assert.Empty(_notes);
    });

    [Fact]
    public void Noise_between_frames_is_counted_and_costs_no_reading() => With(async (device, time) =>
    {
        for (var times = 0; times < 20; times++)
        {
            _cable.Give("\u0000\u00FFt7E\r");
            Assert.Equal(Software.Value, await ReadAsync(device, time));
        }

        await device.DisposeAsync();
        Assert.Equal("in all: 20 x garbled", _notes[^1]);
    });

    [Fact]
    [Trait("case", "CAN-03")]
    public void Frames_that_come_byte_by_byte_are_whole() => With(
        async (device, time) =>
        {
            for (var times = 0; times < 5; times++) Assert.Equal(Software.Value, await ReadAsync(device, time));
            Assert.Empty(_notes);
        },
        bytes =>
        {
            foreach (var one in bytes) _cable.Give([one]);
        });

    [Fact]
    [Trait("case", "SER-01")]
    public void A_pulled_plug_is_link_down_and_back_by_itself() => With(async (device, time) =>
    {
        for (var times = 0; times < 2; times++)
        {
            Assert.Equal(Software.Value, await ReadAsync(device, time));
            _cable.Pull();
            Reading reading;
            do
            {
                reading = await device.ReadAsync(new ReadRequest(Software.Channel, null, time.GetTimestamp()), default);
                Assert.NotNull(reading.Missing);
            }
            while (reading.Missing != MissingCause.LinkDown);
            _cable.Plug();
            await RealTime.Until(() => _cable.Written.EndsWith("O\r", StringComparison.Ordinal), "the opening");
            await Task.Delay(TimeSpan.FromMilliseconds(200), time);
        }

        Assert.Equal(Software.Value, await ReadAsync(device, time));
        Assert.Equal(2, _notes.Count);
        Assert.All(_notes, note => Assert.Contains(_cable.Port, note, StringComparison.Ordinal));
    });

    private static async Task<string?> ReadAsync(IDevice device, TimeProvider time)
    {
        var reading = await device.ReadAsync(new ReadRequest(Software.Channel, null, time.GetTimestamp()), default);
        return reading.Value?.ToString() ?? reading.Detail;
    }

    private void With(Func<IDevice, TimeProvider, Task> work, Action<byte[]>? give = null) => RealTime.Run(async time =>
    {
        var context = SynchronizationContext.Current!;
        using var vehicle = SimulatedBusRig.Vehicle(time);
        using var behind = new SerialCanInterface(vehicle, give ?? _cable.Give);
        _cable.Arrived = bytes => context.Post(_ => behind.Take(bytes), null);
        var opening = await SettingBench.OpenAsync(new SerialCanAdapter(null), time, SimulatedBusRig.Fitted, _notes.Add, ("port", _cable.Port), ("speed", "500 kbit/s"));
        Assert.Null(opening.Fault);
        await using (opening.Device!) await work(opening.Device!, time);
    });
}
