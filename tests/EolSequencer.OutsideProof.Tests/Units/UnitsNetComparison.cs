using EolSequencer.Model.Units;
using UnitsNet;
using UnitsNet.Units;

namespace EolSequencer.OutsideProof.Tests.Units;

/// <summary>Our own unit table against somebody else's: every conversion between two units that both know.</summary>
/// <remarks>
/// Source: UnitsNet 5.75.1. It works in double, and with 2π cut to 11 digits (a revolution per minute is
/// 6.0000000000195 deg/s there), so agreement is asked for to 11 digits.
/// </remarks>
public class UnitsNetComparison
{
    private static readonly Dictionary<string, Enum> Twins = new()
    {
        ["mV"] = ElectricPotentialUnit.Millivolt,
        ["V"] = ElectricPotentialUnit.Volt,
        ["kV"] = ElectricPotentialUnit.Kilovolt,
        ["µA"] = ElectricCurrentUnit.Microampere,
        ["mA"] = ElectricCurrentUnit.Milliampere,
        ["A"] = ElectricCurrentUnit.Ampere,
        ["mohm"] = ElectricResistanceUnit.Milliohm,
        ["ohm"] = ElectricResistanceUnit.Ohm,
        ["kohm"] = ElectricResistanceUnit.Kiloohm,
        ["Mohm"] = ElectricResistanceUnit.Megaohm,
        ["W"] = PowerUnit.Watt,
        ["kW"] = PowerUnit.Kilowatt,
        ["W·h"] = EnergyUnit.WattHour,
        ["kW·h"] = EnergyUnit.KilowattHour,
        ["A·h"] = ElectricChargeUnit.AmpereHour,
        ["N"] = ForceUnit.Newton,
        ["daN"] = ForceUnit.Decanewton,
        ["kN"] = ForceUnit.Kilonewton,
        ["kgf"] = ForceUnit.KilogramForce,
        ["lbf"] = ForceUnit.PoundForce,
        ["N·m"] = TorqueUnit.NewtonMeter,
        ["lbf·ft"] = TorqueUnit.PoundForceFoot,
        ["Pa"] = PressureUnit.Pascal,
        ["mbar"] = PressureUnit.Millibar,
        ["kPa"] = PressureUnit.Kilopascal,
        ["bar"] = PressureUnit.Bar,
        ["MPa"] = PressureUnit.Megapascal,
        ["Mbar"] = PressureUnit.Megabar,
        ["psi"] = PressureUnit.PoundForcePerSquareInch,
        ["km/h"] = SpeedUnit.KilometerPerHour,
        ["m/s"] = SpeedUnit.MeterPerSecond,
        ["mph"] = SpeedUnit.MilePerHour,
        ["m/s²"] = AccelerationUnit.MeterPerSecondSquared,
        ["deg/s"] = RotationalSpeedUnit.DegreePerSecond,
        ["rpm"] = RotationalSpeedUnit.RevolutionPerMinute,
        ["1/min"] = FrequencyUnit.CyclePerMinute,
        ["Hz"] = FrequencyUnit.Hertz,
        ["kHz"] = FrequencyUnit.Kilohertz,
        ["µs"] = DurationUnit.Microsecond,
        ["ms"] = DurationUnit.Millisecond,
        ["s"] = DurationUnit.Second,
        ["min"] = DurationUnit.Minute,
        ["h"] = DurationUnit.Hour,
        ["µm"] = LengthUnit.Micrometer,
        ["mm"] = LengthUnit.Millimeter,
        ["cm"] = LengthUnit.Centimeter,
        ["m"] = LengthUnit.Meter,
        ["km"] = LengthUnit.Kilometer,
        ["in"] = LengthUnit.Inch,
        ["ft"] = LengthUnit.Foot,
        ["1/m"] = ReciprocalLengthUnit.InverseMeter,
        ["′"] = AngleUnit.Arcminute,
        ["deg"] = AngleUnit.Degree,
        ["mrad"] = AngleUnit.Milliradian,
        ["rad"] = AngleUnit.Radian,
        ["g"] = MassUnit.Gram,
        ["kg"] = MassUnit.Kilogram,
        ["t"] = MassUnit.Tonne,
        ["lb"] = MassUnit.Pound,
        ["mL"] = VolumeUnit.Milliliter,
        ["L"] = VolumeUnit.Liter,
        ["mL/min"] = VolumeFlowUnit.MilliliterPerMinute,
        ["L/min"] = VolumeFlowUnit.LiterPerMinute,
        ["L/h"] = VolumeFlowUnit.LiterPerHour,
        ["g/s"] = MassFlowUnit.GramPerSecond,
        ["K"] = TemperatureUnit.Kelvin,
        ["°C"] = TemperatureUnit.DegreeCelsius,
        ["°F"] = TemperatureUnit.DegreeFahrenheit,
        ["K diff"] = TemperatureDeltaUnit.Kelvin,
        ["%"] = RatioUnit.Percent,
        ["ppm"] = RatioUnit.PartPerMillion,
        ["% vol"] = VolumeConcentrationUnit.Percent,
        ["ppm vol"] = VolumeConcentrationUnit.PartPerMillion,
        ["dB"] = LevelUnit.Decibel,
        ["cd"] = LuminousIntensityUnit.Candela,
        ["lx"] = IlluminanceUnit.Lux,
    };

    /// <summary>Units that UnitsNet lacks, and how their factor is shown to be right instead.</summary>
    private static readonly Dictionary<string, string> WithoutTwin = new()
    {
        ["ohm/V"] = "no quantity of this kind; alone in its dimension, nothing to convert",
        ["dB(A)"] = "no weighted levels; alone in its dimension, nothing to convert",
        ["m/km"] = "no slope in metres per kilometre; 1 m/km is 0.1 % by definition",
        ["mbar·L/s"] = "no leak rates; base of its dimension",
        ["Pa·m³/s"] = "no leak rates; 1 Pa·m³/s is 0.01 mbar × 1000 L/s",
    };

    public static TheoryData<string, string> Pairs => new(
        from one in UnitTable.All
        from other in UnitTable.All
        where one.Dimension == other.Dimension && Twins.ContainsKey(one.Symbol) && Twins.ContainsKey(other.Symbol)
        select (one.Symbol, other.Symbol));

    [Theory, MemberData(nameof(Pairs))]
    public void A_conversion_agrees_to_eleven_digits(string from, string to)
    {
        foreach (var number in new[] { 1m, -40m, 0.1m, 123.456m, 98765m })
        {
            Assert.True(UnitTable.Required(from).TryConvert(number, UnitTable.Required(to), out var ours));
            var theirs = UnitConverter.Convert((double)number, Twins[from], Twins[to]);
            Assert.InRange((double)ours, theirs - Tolerance(theirs), theirs + Tolerance(theirs));
        }
    }

    [Fact]
    public void Every_unit_has_a_twin_or_a_reason() =>
        Assert.Equal(UnitTable.All.Select(unit => unit.Symbol).Order(StringComparer.Ordinal), Twins.Keys.Concat(WithoutTwin.Keys).Order(StringComparer.Ordinal));

    [Fact]
    public void Seventy_six_units_are_compared_and_five_are_not()
    {
        Assert.Equal(76, Twins.Count);
        Assert.Equal(5, WithoutTwin.Count);
    }

    [Fact]
    public void One_dimension_here_is_one_quantity_there() =>
        Assert.All(
            UnitTable.All.Where(unit => Twins.ContainsKey(unit.Symbol)).GroupBy(unit => unit.Dimension),
            units => Assert.Single(units.Select(unit => Twins[unit.Symbol].GetType()).Distinct()));

    [Fact]
    public void Our_table_does_not_rest_on_theirs() =>
        Assert.DoesNotContain(typeof(UnitTable).Assembly.GetReferencedAssemblies(), assembly => assembly.Name == "UnitsNet");

    [Fact]
    public void A_lone_unit_without_a_twin_has_nothing_to_convert_into() =>
        Assert.All(["ohm/V", "dB(A)"], symbol => Assert.Single(UnitTable.Of(UnitTable.Required(symbol).Dimension)));

    // Near zero (a temperature close to the other scale's zero) double keeps absolute, not relative digits.
    private static double Tolerance(double theirs) => Math.Max(Math.Abs(theirs) * 1e-11, 1e-12);
}
