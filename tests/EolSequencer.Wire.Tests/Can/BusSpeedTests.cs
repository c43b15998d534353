using EolSequencer.Wire.Can;

namespace EolSequencer.Wire.Tests.Can;

// Bits become time here; every wait of the simulated bus rests on it.
public class BusSpeedTests
{
    [Theory]
    [InlineData(125_000, 1072)]
    [InlineData(250_000, 536)]
    [InlineData(500_000, 268)]
    [InlineData(1_000_000, 134)]
    public void A_classical_frame_lasts_its_bits_at_the_nominal_rate(int rate, int microseconds) =>
        Assert.Equal(
            TimeSpan.FromMicroseconds(microseconds),
            new BusSpeed(rate).FrameTime(CanFrame.Parse("18DA55F1#0322F190CCCCCCCC")));

    [Fact]
    public void A_time_between_two_ticks_is_rounded_up() =>
        Assert.Equal(new TimeSpan(5301), new BusSpeed(99_999).FrameTime(CanFrame.Parse("000#")));

    // ISO 11898-1:2015: no five equal bits stand in this frame outside the check field.
    [Fact]
    public void The_data_phase_runs_at_the_data_rate()
    {
        var frame = CanFrame.Parse("555##1" + string.Concat(Enumerable.Repeat("55", 64)));
        // 17 + 13 bits at 500 kbit/s are 60 µs, 549 bits at 2 Mbit/s are 274.5 µs.
        Assert.Equal(TimeSpan.FromMicroseconds(334.5), new BusSpeed(500_000, 2_000_000).FrameTime(frame));
    }

    [Fact]
    public void Without_a_switch_all_of_an_FD_frame_runs_at_the_nominal_rate()
    {
        var frame = CanFrame.Parse("555##0" + string.Concat(Enumerable.Repeat("55", 64)));
        Assert.Equal(TimeSpan.FromMicroseconds(579 * 2), new BusSpeed(500_000, 2_000_000).FrameTime(frame));
    }

    [Theory]
    [InlineData(0, null)]
    [InlineData(1_000_001, null)]
    [InlineData(500_000, 250_000)]
    public void Rates_outside_the_standard_are_refused(int nominal, int? data) =>
        Assert.Throws<ArgumentOutOfRangeException>(() => new BusSpeed(nominal, data));

    [Fact]
    public void The_intermission_is_three_bits() =>
        Assert.Equal(TimeSpan.FromMicroseconds(6), new BusSpeed(500_000).Intermission);
}
