using CsCheck;
using EolSequencer.Wire.Obd;

namespace EolSequencer.Wire.Tests.Obd;

// The bits are inverted on the bus, and a library calls them "ready": a vehicle would pass that has tested nothing.
// Source: SAE J1979, parameter 01; values asserted in the test suite of python-OBD (tests/test_decoders.py).
public class ReadinessTests
{
    [Fact]
    public void All_supported_and_none_incomplete()
    {
        var readiness = Readiness.Read(Text.Bytes("8307FF00"));
        Assert.True(readiness.IsLampOn);
        Assert.Equal(3, readiness.CodeCount);
        Assert.False(readiness.IsCompressionIgnition);
        Assert.Equal(11, readiness.SelfTests.Count);
        Assert.All(readiness.SelfTests, test => Assert.True(test.IsComplete));
    }

    [Fact]
    public void A_set_bit_means_not_complete()
    {
        var readiness = Readiness.Read(Text.Bytes("830765E5"));
        Assert.True(readiness.IsLampOn);
        Assert.Equal(3, readiness.CodeCount);
        Assert.False(readiness.IsCompressionIgnition);
        Assert.Equal(
            [
                new(SelfTest.Misfire, true), new(SelfTest.FuelSystem, true), new(SelfTest.Components, true),
                new(SelfTest.Catalyst, false), new(SelfTest.EvaporativeSystem, false),
                new(SelfTest.OxygenSensor, false), new(SelfTest.OxygenSensorHeater, false),
            ],
            readiness.SelfTests);
    }

    [Fact]
    public void A_compression_engine_has_other_self_tests()
    {
        var readiness = Readiness.Read(Text.Bytes("00790303"));
        Assert.False(readiness.IsLampOn);
        Assert.Equal(0, readiness.CodeCount);
        Assert.True(readiness.IsCompressionIgnition);
        Assert.Equal(
            [new(SelfTest.Misfire, false), new(SelfTest.HydrocarbonCatalyst, false), new(SelfTest.NitrogenOxideAftertreatment, false)],
            readiness.SelfTests);
    }

    [Fact]
    public void What_is_written_reads_back() =>
        Gen.Byte.Array[4].Sample(bytes =>
        {
            var readiness = Readiness.Read(bytes);
            var again = Readiness.Read(readiness.Write());
            Assert.Equal(readiness with { SelfTests = [] }, again with { SelfTests = [] });
            Assert.Equal(readiness.SelfTests, again.SelfTests);
        });
}
