using EolSequencer.Model.Devices;
using EolSequencer.Model.Judging;
using EolSequencer.Model.Ports;
using EolSequencer.Model.Units;
using EolSequencer.Model.Values;
using EolSequencer.Simulators.Time;

namespace EolSequencer.Simulators.Tests.Instruments;

/// <summary>Instruments measure the vehicle, with their own small errors, and fail in their own ways.</summary>
public sealed class InstrumentTests
{
    [Fact]
    public void The_meter_sees_a_lamp_that_a_unit_was_told_to_light()
    {
        var (time, vehicle) = Vans.New();
        var meter = vehicle.CreateCurrentMeter("meter", "M-0417");
        Act(time, meter, "zero");
        Assert.InRange(Read(time, meter, "lamp_current"), -0.03m, 0.03m);
        vehicle.Van.Lamps.Take(0, true);
        time.Advance(TimeSpan.FromMilliseconds(150));
        Assert.InRange(Read(time, meter, "lamp_current"), 4.0m, 4.8m);
        Assert.Equal("M-0417", meter.Instrument);
    }

    [Fact]
    public void A_cold_filament_draws_several_times_its_current()
    {
        var (time, vehicle) = Vans.New();
        var meter = vehicle.CreateCurrentMeter("meter", null);
        vehicle.Van.Lamps.Take(0, true);
        Assert.True(Read(time, meter, "lamp_current") > 5.2m);
    }

    [Fact]
    public void A_value_carries_its_unit_the_end_of_the_measurement_and_the_mark_of_a_binary_number()
    {
        var (time, vehicle) = Vans.New();
        var before = time.GetTimestamp();
        var reading = Reading(time, vehicle.CreateCurrentMeter("meter", null), "battery_voltage");
        var value = Assert.IsType<NumberValue>(reading.Value);
        Assert.Equal(UnitTable.Required("V"), value.Unit);
        Assert.True(value.Inexact);
        Assert.Equal(time.GetTimestamp(), reading.Stamp);
        Assert.InRange(time.GetElapsedTime(before), TimeSpan.FromMilliseconds(1), TimeSpan.FromMilliseconds(19)); // polled every 20 ms
    }

    [Theory]
    [InlineData("meter_silent", MissingCause.Silent)]
    [InlineData("meter_overload", MissingCause.Overload)]
    public void A_faulty_meter_says_why_it_has_no_value(string fault, MissingCause cause)
    {
        var (time, vehicle) = Vans.New(fault);
        var reading = Reading(time, vehicle.CreateCurrentMeter("meter", null), "lamp_current");
        Assert.Equal(cause, reading.Missing);
        Assert.NotEmpty(reading.Detail!);
    }

    [Fact]
    public void A_watched_channel_is_read_every_so_often_until_nobody_listens()
    {
        var (time, vehicle) = Vans.New();
        var meter = vehicle.CreateCurrentMeter("meter", null);
        var heard = new Listener();
        using (meter.Watch(new ReadRequest(Channel("battery_voltage"), null, 0), TimeSpan.FromMilliseconds(100), heard)) Pass(time, 1.05);
        Assert.Equal(11, heard.Count);
        Pass(time, 1);
        Assert.Equal(11, heard.Count);
    }

    [Fact]
    public void The_sound_meter_gives_the_loudest_moment_of_one_measurement()
    {
        var (time, vehicle) = Vans.New();
        var noise = vehicle.CreateSoundMeter("noise", null);
        var level = time.Run(async () =>
        {
            await noise.ActAsync(Start(0.5m), default);
            var reading = noise.ReadAsync(new ReadRequest(Channel("level"), null, 0), default);
            await Task.Delay(TimeSpan.FromMilliseconds(200), time);
            vehicle.Van.Horn.Take(true);
            vehicle.Van.Horn.Take(null);
            var value = ((NumberValue)(await reading).Value!).Number;
            Assert.Equal(TimeSpan.FromMilliseconds(500), time.Now);
            return value;
        });
        Assert.InRange(level, 98, 110);
    }

    [Fact]
    public void A_result_before_the_read_is_not_read_again()
    {
        var (time, vehicle) = Vans.New();
        var noise = vehicle.CreateSoundMeter("noise", null);
        time.Run(async () =>
        {
            await noise.ActAsync(Start(0.1m), default);
            await Task.Delay(TimeSpan.FromSeconds(1), time);
            using var limit = new CancellationTokenSource(TimeSpan.FromSeconds(5), time);
            await Assert.ThrowsAnyAsync<OperationCanceledException>(() => noise.ReadAsync(new ReadRequest(Channel("level"), null, 0), limit.Token).AsTask());
        });
    }

    [Fact]
    public void The_line_takes_over_a_moment_after_it_was_told()
    {
        var (time, vehicle) = Vans.New();
        var line = vehicle.CreateLineSignal("line", null);
        Assert.Equal(TruthValue.No, Reading(time, line, "accepted").Value);
        Act(time, line, "tell");
        Assert.Equal(TruthValue.No, Reading(time, line, "accepted").Value);
        time.Advance(TimeSpan.FromSeconds(1));
        Assert.Equal(TruthValue.Yes, Reading(time, line, "accepted").Value);
    }

    [Fact]
    public void What_an_instrument_does_not_have_is_refused()
    {
        var (time, vehicle) = Vans.New();
        Assert.Equal(MissingCause.Refused, Reading(time, vehicle.CreateCurrentMeter("meter", null), "torque").Missing);
        Assert.Equal(MissingCause.Refused, Act(time, vehicle.CreateSoundMeter("noise", null), "zero").Missing);
    }

    private static ActionRequest Start(decimal seconds) => new(
        new ActionDescription { Name = "start" }, null, null, new Dictionary<string, Value> { ["time"] = new NumberValue(seconds, UnitTable.Second) });

    private static ChannelDescription Channel(string name) => new() { Name = name, Shape = ValueShape.Count };

    private static Reading Reading(VirtualTime time, IDevice device, string channel) =>
        time.Run(() => device.ReadAsync(new ReadRequest(Channel(channel), null, time.GetTimestamp()), default).AsTask());

    private static decimal Read(VirtualTime time, IDevice device, string channel) => ((NumberValue)Reading(time, device, channel).Value!).Number;

    private static Reading Act(VirtualTime time, IDevice device, string action) =>
        time.Run(() => device.ActAsync(new ActionRequest(new ActionDescription { Name = action }, null, null, new Dictionary<string, Value>()), default).AsTask());

    private static void Pass(VirtualTime time, double seconds) => time.Run(() => Task.Delay(TimeSpan.FromSeconds(seconds), time));

    private sealed class Listener : IReadingListener
    {
        public int Count { get; private set; }

        public void Received(in Reading reading) => Count++;
    }
}
