using System.Text;
using EolSequencer.Wire.Obd;

namespace EolSequencer.Wire.Tests.Obd;

// The number that says which vehicle this is. Layout: SAE J1979 over CAN; bytes agree with scapy 2.5.0 and with the
// dissection of tshark 4.0.17.
public class VehicleInformationTests
{
    private const string Number = "TESTVXN06AA000017";

    [Fact, Trait("case", "OBD-01")]
    public void The_count_byte_is_no_part_of_the_vehicle_number()
    {
        var message = Text.Bytes("490201" + Hex(Number));
        Assert.Equal(Number, VehicleInformation.ReadVehicleNumber(message).Value);
        Assert.Equal(message, VehicleInformation.MakeVehicleNumber(Number));
    }

    [Theory, Trait("case", "OBD-02")]
    [InlineData("TESTVXN06AA000010\0\0\0\0\0\0\0")]
    [InlineData("TESTVXN06AA000010")]
    public void Filling_is_dropped_and_a_zero_digit_is_not(string field) =>
        Assert.Equal("TESTVXN06AA000010", VehicleInformation.ReadVehicleNumber(Text.Bytes("490201" + Hex(field))).Value);

    [Theory, Trait("case", "OBD-02")]
    [InlineData("TESTVXN0\0" + "6AA000010", "illegal byte 00 in a text, at place 9")]
    [InlineData("TESTVXN06AA00001\0", "a vehicle number of 16 instead of 17 characters")]
    [InlineData("TESTVXN06AA00001", "short answer (19 of 20 bytes)")]
    [InlineData("\0\0\0\0\0\0\0\0\0\0\0\0\0\0\0\0\0", "a vehicle number of 0 instead of 17 characters")]
    public void A_vehicle_number_is_never_shortened(string field, string fault) =>
        Assert.Equal(fault, VehicleInformation.ReadVehicleNumber(Text.Bytes("490201" + Hex(field))).Fault);

    [Fact]
    public void Two_vehicle_numbers_are_one_too_many() =>
        Assert.Equal("2 vehicle numbers instead of one", VehicleInformation.ReadVehicleNumber(Text.Bytes("490202" + Hex(Number))).Fault);

    [Fact]
    public void A_unit_names_the_types_it_supports()
    {
        var message = Text.Bytes("490055400000");
        Assert.Equal([0x02, 0x04, 0x06, 0x08, 0x0A], VehicleInformation.ReadSupported(message).Value.Select(type => (int)type));
        Assert.Equal(message, VehicleInformation.MakeSupported(VehicleInformation.ReadSupported(message).Value));
    }

    [Fact]
    public void Calibration_identifiers_are_filled_up_to_16()
    {
        var message = Text.Bytes("490402" + Hex("SWDEMO-01\0\0\0\0\0\0\0") + Hex("0123456789ABCDEF"));
        Assert.Equal(["SWDEMO-01", "0123456789ABCDEF"], VehicleInformation.ReadCalibrationIds(message).Value);
        Assert.Equal(message, VehicleInformation.MakeCalibrationIds("SWDEMO-01", "0123456789ABCDEF"));
        Assert.Equal("short answer (34 of 35 bytes)", VehicleInformation.ReadCalibrationIds(message.AsSpan(..^1)).Fault);
        Assert.Equal("short answer (2 of 3 bytes)", VehicleInformation.ReadCalibrationIds(Text.Bytes("4904")).Fault);
    }

    [Fact]
    public void Verification_numbers_have_four_bytes()
    {
        Assert.Equal([0xABCD1234u], VehicleInformation.ReadVerificationNumbers(Text.Bytes("490601ABCD1234")).Value);
        Assert.Equal(Text.Bytes("4906020000000100000002"), VehicleInformation.MakeVerificationNumbers(1, 2));
        Assert.Equal("short answer (7 of 11 bytes)", VehicleInformation.ReadVerificationNumbers(Text.Bytes("490602ABCD1234")).Fault);
    }

    [Fact]
    public void Requests_name_one_type()
    {
        Assert.Equal(Text.Bytes("0902"), VehicleInformation.MakeRequest(InformationType.VehicleNumber));
        Assert.True(VehicleInformation.TryReadRequest(Text.Bytes("0904"), out var type));
        Assert.Equal(InformationType.CalibrationIds, type);
        Assert.False(VehicleInformation.TryReadRequest(Text.Bytes("09"), out _));
    }

    private static string Hex(string text) => Convert.ToHexString(Encoding.ASCII.GetBytes(text));
}
