using System.Buffers.Binary;

namespace EolSequencer.Wire.Obd;

/// <summary>Service 09: vehicle number, calibration identifiers and verification numbers.</summary>
/// <remarks>
/// Source: SAE J1979 over CAN: behind the type stands the number of items, then the items. Buses before CAN send them in
/// another form, which is not read here.
/// </remarks>
public static class VehicleInformation
{
    private const byte Service = (byte)ObdService.VehicleInformation;
    private const int HeadLength = 3;
    private const int VehicleNumberLength = 17;
    private const int CalibrationIdLength = 16;
    private const int VerificationNumberLength = 4;

    public static byte[] MakeRequest(InformationType type) => [Service, (byte)type];

    /// <summary>The type asked for; false: the message is no such request and gets no answer.</summary>
    public static bool TryReadRequest(ReadOnlySpan<byte> message, out InformationType type)
    {
        var isRight = message.Length == 2 && message[0] == Service;
        type = isRight ? (InformationType)message[1] : default;
        return isRight;
    }

    /// <param name="supported">The types a unit supports.</param>
    public static byte[] MakeSupported(IEnumerable<InformationType> supported) =>
    [
        ObdMessage.PositiveOf(ObdService.VehicleInformation), (byte)InformationType.Supported,
        .. SupportBitmap.Write(0, supported.Select(type => (byte)type)),
    ];

    /// <param name="number">17 characters.</param>
    public static byte[] MakeVehicleNumber(string number) => MakeTexts(InformationType.VehicleNumber, VehicleNumberLength, [number]);

    /// <param name="ids">Texts of up to 16 characters, filled up with zeros.</param>
    public static byte[] MakeCalibrationIds(params ReadOnlySpan<string> ids) => MakeTexts(InformationType.CalibrationIds, CalibrationIdLength, ids);

    public static byte[] MakeVerificationNumbers(params ReadOnlySpan<uint> numbers)
    {
        var message = Begin(InformationType.VerificationNumbers, numbers.Length, VerificationNumberLength);
        for (var i = 0; i < numbers.Length; i++)
        {
            BinaryPrimitives.WriteUInt32BigEndian(
                message.AsSpan(HeadLength + (VerificationNumberLength * i)), numbers[i]);
        }

        return message;
    }

    /// <summary>The supported types.</summary>
    public static Decoded<IReadOnlyList<InformationType>> ReadSupported(ReadOnlySpan<byte> message) =>
        ObdMessage.HeadFault(message, ObdService.VehicleInformation, 2 + SupportBitmap.Length) is { } fault
            ? Decoded<IReadOnlyList<InformationType>>.Faulty(fault)
            : SupportBitmap.Read(0, message[2..]).Select(id => (InformationType)id).ToArray();

    /// <summary>The vehicle number as text, not checked further; a field longer than 17 bytes may be filled up behind it.</summary>
    public static Decoded<string> ReadVehicleNumber(ReadOnlySpan<byte> message)
    {
        if (ObdMessage.HeadFault(message, ObdService.VehicleInformation, HeadLength + VehicleNumberLength) is { } fault)
        {
            return Decoded<string>.Faulty(fault);
        }

        if (message[2] != 1)
        {
            return Decoded<string>.Faulty($"{message[2]} vehicle numbers instead of one");
        }

        var text = PaddedText.Read(message[HeadLength..]);
        return text.TryGet(out var number) && number.Length != VehicleNumberLength
            ? Decoded<string>.Faulty($"a vehicle number of {number.Length} instead of {VehicleNumberLength} characters")
            : text;
    }

    /// <summary>The calibration identifiers without their filling.</summary>
    public static Decoded<IReadOnlyList<string>> ReadCalibrationIds(ReadOnlySpan<byte> message)
    {
        if (ItemsFault(message, CalibrationIdLength) is { } fault)
        {
            return Decoded<IReadOnlyList<string>>.Faulty(fault);
        }

        var ids = new string[message[2]];
        for (var i = 0; i < ids.Length; i++)
        {
            var text = PaddedText.Read(message.Slice(HeadLength + (CalibrationIdLength * i), CalibrationIdLength));
            if (!text.TryGet(out var id))
            {
                return Decoded<IReadOnlyList<string>>.Faulty(text.Fault!);
            }

            ids[i] = id;
        }

        return ids;
    }

    /// <summary>The calibration verification numbers.</summary>
    public static Decoded<IReadOnlyList<uint>> ReadVerificationNumbers(ReadOnlySpan<byte> message)
    {
        if (ItemsFault(message, VerificationNumberLength) is { } fault)
        {
            return Decoded<IReadOnlyList<uint>>.Faulty(fault);
        }

        var numbers = new uint[message[2]];
        for (var i = 0; i < numbers.Length; i++)
        {
            numbers[i] = BinaryPrimitives.ReadUInt32BigEndian(
                message[(HeadLength + (VerificationNumberLength * i))..]);
        }

        return numbers;
    }

    private static byte[] MakeTexts(InformationType type, int length, ReadOnlySpan<string> texts)
    {
        var message = Begin(type, texts.Length, length);
        for (var i = 0; i < texts.Length; i++)
        {
            PaddedText.Write(message.AsSpan(HeadLength + (length * i), length), texts[i]);
        }

        return message;
    }

    private static byte[] Begin(InformationType type, int count, int itemLength)
    {
        var message = new byte[HeadLength + (itemLength * count)];
        (message[0], message[1], message[2]) = (ObdMessage.PositiveOf(ObdService.VehicleInformation), (byte)type, checked((byte)count));
        return message;
    }

    private static string? ItemsFault(ReadOnlySpan<byte> message, int itemLength) =>
        ObdMessage.HeadFault(message, ObdService.VehicleInformation, HeadLength)
        ?? ObdMessage.HeadFault(message, ObdService.VehicleInformation, HeadLength + (itemLength * message[2]));
}
