using EolSequencer.Model.Traces;

namespace EolSequencer.Model.Tests.Traces;

/// <summary>Features against values that others have published or computed; each names its source.</summary>
public class PublishedCurveTests
{
    /// <summary>NIST StRD, linear regression, data set Norris (lower difficulty, 36 observations): x as seconds, y as number.</summary>
    private static readonly (double, double)[] Norris =
    [
        (0.2, 0.1), (0.3, 0.3), (0.3, 0.6), (0.4, 0.3), (0.5, 0.2), (0.6, 0.1), (10.1, 9.2), (11.1, 10.2), (11.6, 10.8),
        (118.2, 118.1), (118.3, 117.6), (120.2, 119.6), (226.5, 228.1), (228.1, 228.3), (229.2, 228.9), (337.4, 338.8),
        (338.0, 339.3), (339.1, 339.3), (447.5, 448.9), (448.6, 449.1), (448.9, 449.2), (556.0, 557.7), (556.8, 557.6),
        (558.2, 559.2), (666.3, 668.5), (666.9, 668.8), (669.1, 668.4), (775.5, 778.1), (777.0, 778.9), (779.0, 778.9),
        (884.6, 888.0), (887.2, 888.0), (887.6, 888.8), (995.8, 998.0), (996.3, 998.5), (999.0, 998.5),
    ];

    /// <summary>NIST StRD Norris: B1 = 1.00211681802045, here to 12 digits.</summary>
    [Fact]
    public void The_slope_of_a_certified_data_set() => Assert.Equal(1.00211681802m, Curves.Of(Norris).Slope());

    /// <summary>
    /// Step response of a second-order system, wn = 1: overshoot in percent of the step, peak time, settling to 2 % and 5 %, rise
    /// from 10 % to 90 %, all from the closed form. The names are those of IEEE 181 for transitions; 4/ζ is an envelope, not the
    /// settling time.
    /// </summary>
    [Theory]
    [InlineData(.2, 52.66206, 3.20637, 19.6019, 13.7444, 1.2034)]
    [InlineData(.3, 37.23261, 3.29328, 11.2301, 10.1371, 1.3213)]
    [InlineData(.4, 25.38267, 3.42776, 8.4093, 7.6088, 1.4635)]
    [InlineData(.5, 16.30335, 3.62760, 8.0763, 5.2891, 1.6376)]
    [InlineData(.6, 9.47802, 3.92699, 5.9430, 5.2290, 1.8541)]
    [InlineData(.7, 4.59879, 4.39911, 5.9788, 2.8998, 2.1262)]
    [InlineData(.8, 1.51646, 5.23599, 3.7558, 3.3854, 2.4675)]
    public void A_damped_step(double zeta, double overshoot, double peak, double settles2, double settles5, double rise)
    {
        var damped = Math.Sqrt(1 - (zeta * zeta));
        var curve = Curves.Sampled(
            t => 1 - (Math.Exp(-zeta * t) * (Math.Cos(damped * t) + (zeta / damped * Math.Sin(damped * t)))), 25, 0.002);
        Assert.Equal(overshoot, (double)(curve.Max() - 1) * 100, 4e-4);
        Assert.Equal(peak, curve.MaxAt() / 1e6, 2e-3);
        Assert.Equal(settles2, curve.Settles(1, 0.02m) / 1e6, 2e-4);
        Assert.Equal(settles5, curve.Settles(1, 0.05m) / 1e6, 2e-4);
        Assert.Equal(rise, (curve.Rises(0.9m, 0.9m) - curve.Rises(0.1m, 0.1m)) / 1e6, 2e-4);
    }

    /// <summary>First order, τ = 1: rise ln 9, settling ln 50 and ln 20.</summary>
    [Fact]
    public void A_first_order_step()
    {
        var curve = Curves.Sampled(t => 1 - Math.Exp(-t), 8, 0.001);
        Assert.Equal(2.197225, (curve.Rises(0.9m, 0.9m) - curve.Rises(0.1m, 0.1m)) / 1e6, 2e-6);
        Assert.Equal(3.912023, curve.Settles(1, 0.02m) / 1e6, 2e-6);
        Assert.Equal(2.995732, curve.Settles(1, 0.05m) / 1e6, 2e-6);
    }

    /// <summary>
    /// 49 CFR 571.108 (FMVSS 108), agency letter on flash rate: 200/250/200/250/200/850 ms is three flashes in 1,950 ms, 92.31 a
    /// minute, on for 30.8 % of the time; UN R48 6.5.9.1 wants 90 ± 30.
    /// </summary>
    [Fact]
    public void An_uneven_flasher_is_averaged_over_whole_cycles()
    {
        int[] one = [200, 250, 200, 250, 200, 850];
        var lamp = Curves.Pattern([100, .. one, .. one]);
        var (first, last) = (lamp.Rises(), lamp.Rises() + 1_950_000);
        Assert.Equal(92.31m, Math.Round(lamp.Between(0, last).Rate(), 2));
        Assert.Equal(30.8, lamp.Between(first, last).TimeOn() / 1_950_000.0 * 100, 0.05);
    }

    /// <summary>FMVSS 104 S4.1.1: 45 cycles a minute are 1.333 s each, 20 are 3.000 s.</summary>
    [Theory]
    [InlineData(1333.333, 45)]
    [InlineData(3000, 20)]
    public void A_wiper_period_is_a_rate(double milliseconds, double perMinute)
    {
        var turns = Curves.Sampled(t => Math.Sin(2 * Math.PI * t / milliseconds * 1000), 5 * milliseconds / 1000, milliseconds / 1000 / 400);
        Assert.Equal(perMinute, (double)turns.Rate(-0.5m, 0.5m), 1e-3);
    }

    /// <summary>0 to 60 mph in 12 s: a mean of 2.235 m/s²; 1 mile is 1609.344 m exactly.</summary>
    [Fact]
    public void An_acceleration_is_the_slope_of_the_speed()
    {
        var speed = Curves.Sampled(t => 60 * 1609.344 / 3600 * t / 12, 12, 0.02);
        Assert.Equal(2.235, (double)speed.Slope(), 5e-4);
    }

    /// <summary>
    /// A coast-down of 0.15 m/s² at 2,600 kg is a drag of 390 N (F = m·a).
    /// </summary>
    [Fact]
    public void A_coast_down_gives_the_drag() =>
        Assert.Equal(390, -2600 * (double)Curves.Sampled(t => 20 - (0.15 * t), 30, 0.02).Slope(), 1e-6);

    /// <summary>
    /// Gear by ratio, r = n·60·C/(1000·v·i_f) with C 2.44854 m and i_f 3.55: 2,000 rpm at 95.135 km/h is 0.8700, the fifth gear;
    /// 2,500 rpm at 60 km/h is 1.7243. Arithmetic of the formula.
    /// </summary>
    [Theory]
    [InlineData(2000, 95.135, 0.8700)]
    [InlineData(2500, 60, 1.7243)]
    public void The_ratio_of_engine_to_road_speed(double rpm, double speed, double ratio)
    {
        var over = Curves.Of((0, rpm), (1, rpm)).Over(Curves.Of((0, speed), (1, speed)));
        Assert.Equal(ratio, (double)over.Mean() * 60 * 2.44854 / (1000 * 3.55), 5e-5);
    }

    /// <summary>
    /// Six gears 4.17 to 0.69: the step to the next gear, and the engine speed after shifting up from 3,000 rpm. Arithmetic of the
    /// ratios.
    /// </summary>
    [Theory]
    [InlineData(4.17, 2.34, 1683)]
    [InlineData(2.34, 1.52, 1949)]
    [InlineData(1.52, 1.14, 2250)]
    [InlineData(1.14, 0.87, 2289)]
    [InlineData(0.87, 0.69, 2379)]
    public void An_upshift_is_a_step_of_the_ratio(double from, double to, double after)
    {
        const double KmhPerRpm = 60 * 2.44854 / 1000 / 3.55;
        double Speed(double t) => 3000 * KmhPerRpm / from; // a shift at constant road speed
        var engine = Curves.Of((0, 3000), (2, 3000), (2.2, Speed(2) * to / KmhPerRpm), (4, Speed(4) * to / KmhPerRpm));
        var ratio = Curves.Of([.. engine.Points.Select(point => (point.At / 1e6, (double)point.Number / Speed(0) * KmhPerRpm))]);
        Assert.InRange(ratio.RatioStep((decimal)from, (decimal)to, Curves.Micro(0.5)), Curves.Micro(2), Curves.Micro(2.2));
        Assert.Equal(after, (double)engine.Last(), 0.5);
    }

    /// <summary>A ratio of 1.7243 lies below 1.8859, the geometric middle of 2.34 and 1.52: nearest the third gear.</summary>
    [Fact]
    public void The_middle_of_two_gears_is_geometric()
    {
        var slipping = Curves.Of((0, 2.34), (1, 2.34), (1.1, 1.7243), (2, 1.7243));
        var passes = slipping.RatioStep(2.34m, 1.52m, Curves.Micro(0.5));
        Assert.Equal(1.8859, (double)slipping.At(passes), 1e-4);
    }
}
