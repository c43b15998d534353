using EolSequencer.Devices.Adapters;
using EolSequencer.Devices.Tests.Kit;

namespace EolSequencer.Devices.Tests.Adapters;

/// <summary>A slip in a station file is told with its place and with what to write, before any equipment is touched.</summary>
public class CheckedSettingsTests
{
    private readonly Sample _adapter = new();

    [Fact]
    public void Right_settings_are_read_as_what_they_are()
    {
        var settings = SettingBench.Read(
            _adapter, out var fault, ("port", "/dev/ttyUSB0"), ("wait", "1.5 s"), ("id", "0x0E80"), ("parity", "even"), ("echo", "yes"), ("speed", "500 kbit/s"))!;
        Assert.Null(fault);
        Assert.Equal("/dev/ttyUSB0", settings.Text("port"));
        Assert.Equal(TimeSpan.FromSeconds(1.5), settings.Time("wait"));
        Assert.Equal(0x0E80, settings.Whole("id"));
        Assert.True(settings.YesNo("echo"));
        Assert.Equal(500_000, settings.BitRate("speed"));
    }

    [Fact]
    public void What_is_not_written_is_null()
    {
        var settings = SettingBench.Read(_adapter, out _, ("port", "p"))!;
        Assert.Null(settings.Time("wait"));
        Assert.Null(settings.Whole("id"));
        Assert.Null(settings.YesNo("echo"));
        Assert.Null(settings.BitRate("speed"));
        Assert.Null(settings.Text("parity"));
    }

    [Theory]
    [InlineData("wait", "70", "a time between 1 ms and 10000 ms")]
    [InlineData("wait", "11 s", "a time between 1 ms and 10000 ms")]
    [InlineData("wait", "0 ms", "a time between 1 ms and 10000 ms")]
    [InlineData("id", "0x1FFFF", "a whole number between 0 and 65535")]
    [InlineData("id", "1.5", "a whole number")]
    [InlineData("parity", "Even", "one of none, even, odd")]
    [InlineData("echo", "true", "yes or no")]
    [InlineData("speed", "500000", "one of 125 kbit/s, 500 kbit/s, 1 Mbit/s")]
    [InlineData("speed", "400 kbit/s", "one of 125 kbit/s, 500 kbit/s, 1 Mbit/s")]
    [InlineData("wiat", "70 ms", "did you mean wait?")]
    [InlineData("baud", "9600", "it knows port, wait, id, parity, echo, speed")]
    public void A_wrong_one_is_told_with_its_place_and_what_to_write(string name, string text, string mentions)
    {
        Assert.Null(SettingBench.Read(_adapter, out var fault, ("port", "p"), (name, text)));
        Assert.StartsWith("station.yaml", fault, StringComparison.Ordinal);
        Assert.Contains(mentions, fault, StringComparison.Ordinal);
    }

    [Fact]
    public void One_that_is_missing_is_asked_for_with_an_example()
    {
        Assert.Null(SettingBench.Read(_adapter, out var fault, ("wait", "1 s")));
        Assert.Contains("wants a setting 'port', where it is plugged in; write  port: /dev/ttyUSB0", fault, StringComparison.Ordinal);
    }

    private sealed class Sample : IDeviceAdapter
    {
        public AdapterDescription Description { get; } = new(
            "sample",
            "a test's own",
            new("port", new SettingForm.Text("the name of a port", "/dev/ttyUSB0"), "where it is plugged in") { IsRequired = true },
            new("wait", new SettingForm.Time(TimeSpan.FromMilliseconds(1), TimeSpan.FromSeconds(10)), "how long"),
            new("id", new SettingForm.Whole(0, 0xFFFF, "0x0E80"), "its address"),
            new("parity", new SettingForm.OneOf("none", "even", "odd"), "parity"),
            new("echo", new SettingForm.YesNo(), "echo"),
            new("speed", new SettingForm.BitRate(125_000, 500_000, 1_000_000), "bit rate"));

        public ValueTask<AdapterOpening> OpenAsync(AdapterRequest request, CancellationToken cancel) => new(AdapterOpening.Refused("never opened here"));
    }
}
