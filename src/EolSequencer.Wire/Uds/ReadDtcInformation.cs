using EolSequencer.Wire.TroubleCodes;

namespace EolSequencer.Wire.Uds;

/// <summary>Service 19: trouble codes and what is stored with them.</summary>
/// <remarks>
/// Source: ISO 14229-1, ReadDTCInformation, sub-functions 01, 02, 04, 06 and 0A. Lists must be whole records: the
/// transport gives the exact length, so a rest is a truncated record and not padding.
/// </remarks>
public static class ReadDtcInformation
{
    private const ServiceId Service = ServiceId.ReadDtcInformation;
    private const int CodeLength = 3;
    private const int EntryLength = 4;

    /// <summary>What is asked for.</summary>
    public enum Report : byte
    {
        NumberByStatusMask = 0x01,
        CodesByStatusMask = 0x02,
        SnapshotByCode = 0x04,
        ExtendedDataByCode = 0x06,
        SupportedCodes = 0x0A,
    }

    /// <param name="Report">What is asked for.</param>
    /// <param name="Mask">With a status mask: a code is listed when one of these bits is set in its status.</param>
    /// <param name="Code">By code: which one.</param>
    /// <param name="Record">By code: the record number, FF for all.</param>
    /// <param name="SuppressPositive">Whether a positive response may stay away.</param>
    public readonly record struct Request(Report Report, TroubleCodeStatus Mask, TroubleCode Code, byte Record, bool SuppressPositive);

    /// <param name="Availability">The status bits that the control unit supports at all.</param>
    /// <param name="Format">Which list its codes come from.</param>
    /// <param name="Count">0 to 65,535 codes.</param>
    public readonly record struct Number(TroubleCodeStatus Availability, TroubleCodeFormat Format, int Count);

    /// <param name="Availability">The status bits that the control unit supports at all.</param>
    /// <param name="Entries">The codes in the order of the control unit.</param>
    public readonly record struct List(TroubleCodeStatus Availability, IReadOnlyList<StoredCode> Entries);

    /// <param name="Entry">The code and its status.</param>
    /// <param name="Records">
    /// Record number and data of each record, one after the other, as the control unit sent them; empty: none is stored.
    /// How long a record is, the description of the control unit says.
    /// </param>
    public readonly record struct Detail(StoredCode Entry, ReadOnlyMemory<byte> Records);

    public static byte[] MakeNumberRequest(TroubleCodeStatus mask) => [(byte)Service, (byte)Report.NumberByStatusMask, (byte)mask];

    public static byte[] MakeListRequest(TroubleCodeStatus mask) => [(byte)Service, (byte)Report.CodesByStatusMask, (byte)mask];

    public static byte[] MakeSupportedRequest() => [(byte)Service, (byte)Report.SupportedCodes];

    /// <param name="report">Snapshot or extended data.</param>
    /// <param name="code">A code of three bytes.</param>
    /// <param name="record">The record number, FF for all.</param>
    public static byte[] MakeDetailRequest(Report report, TroubleCode code, byte record)
    {
        var message = new byte[6];
        (message[0], message[1], message[5]) = ((byte)Service, (byte)report, record);
        code.Write(message.AsSpan(2, CodeLength));
        return message;
    }

    /// <summary>False: the length does not go with the sub-function (code 13), or the sub-function is none of these (code 12).</summary>
    /// <param name="message">A request of this service.</param>
    /// <param name="request">What it asks for.</param>
    /// <param name="refusal">The code that is due when it is wrong.</param>
    public static bool TryReadRequest(ReadOnlySpan<byte> message, out Request request, out NegativeCode refusal)
    {
        request = default;
        refusal = NegativeCode.IncorrectMessageLengthOrInvalidFormat;
        if (message.Length < 2 || !Bytes.IsRequest(message, Service))
        {
            return false;
        }

        var report = (Report)(message[1] & SubFunction.ValueBits);
        if (LengthOf(report) is not { } length)
        {
            refusal = NegativeCode.SubFunctionNotSupported;
            return false;
        }

        if (message.Length != length)
        {
            return false;
        }

        refusal = NegativeCode.None;
        request = new Request(
            report,
            length == 3 ? (TroubleCodeStatus)message[2] : TroubleCodeStatus.None,
            length == 6 ? TroubleCode.ReadThree(message[2..]) : default,
            length == 6 ? message[5] : (byte)0,
            (message[1] & SubFunction.SuppressBit) != 0);
        return true;
    }

    public static byte[] MakeNumberResponse(Number number) =>
    [
        Bytes.PositiveOf(Service), (byte)Report.NumberByStatusMask, (byte)number.Availability, (byte)number.Format,
        Bytes.High(checked((ushort)number.Count)), Bytes.Low((ushort)number.Count),
    ];

    /// <param name="report">By status mask, or supported codes.</param>
    /// <param name="availability">The status bits that the control unit supports at all.</param>
    /// <param name="entries">Codes of three bytes.</param>
    public static byte[] MakeListResponse(Report report, TroubleCodeStatus availability, IReadOnlyList<StoredCode> entries)
    {
        var message = new byte[3 + (EntryLength * entries.Count)];
        (message[0], message[1], message[2]) = (Bytes.PositiveOf(Service), (byte)report, (byte)availability);
        for (var i = 0; i < entries.Count; i++)
        {
            WriteEntry(message.AsSpan(3 + (EntryLength * i), EntryLength), entries[i]);
        }

        return message;
    }

    /// <param name="report">Snapshot or extended data.</param>
    /// <param name="entry">A code of three bytes and its status.</param>
    /// <param name="records">Record number and data of each record, one after the other.</param>
    public static byte[] MakeDetailResponse(Report report, StoredCode entry, ReadOnlySpan<byte> records)
    {
        Span<byte> head = stackalloc byte[2 + EntryLength];
        (head[0], head[1]) = (Bytes.PositiveOf(Service), (byte)report);
        WriteEntry(head[2..], entry);
        return Bytes.Join(head, records);
    }

    public static Decoded<Number> ReadNumber(ReadOnlySpan<byte> message) =>
        Bytes.HeadFault(message, Service, least: 6) is { } fault
            ? Decoded<Number>.Faulty(fault)
            : new Number((TroubleCodeStatus)message[2], (TroubleCodeFormat)message[3], Bytes.UInt16(message[4..]));

    /// <summary>A list of codes; an empty one is right.</summary>
    public static Decoded<List> ReadList(ReadOnlySpan<byte> message)
    {
        if (Bytes.HeadFault(message, Service, least: 3) is { } fault)
        {
            return Decoded<List>.Faulty(fault);
        }

        var rest = message[3..];
        if (rest.Length % EntryLength != 0)
        {
            return Decoded<List>.Faulty($"short answer (the last of {(rest.Length / EntryLength) + 1} codes has {rest.Length % EntryLength} of {EntryLength} bytes)");
        }

        var entries = new StoredCode[rest.Length / EntryLength];
        for (var i = 0; i < entries.Length; i++)
        {
            entries[i] = ReadEntry(rest[(EntryLength * i)..]);
        }

        return new List((TroubleCodeStatus)message[2], entries);
    }

    /// <summary>The records of one code.</summary>
    public static Decoded<Detail> ReadDetail(ReadOnlyMemory<byte> message) =>
        Bytes.HeadFault(message.Span, Service, 2 + EntryLength) is { } fault
            ? Decoded<Detail>.Faulty(fault)
            : new Detail(ReadEntry(message.Span[2..]), message[(2 + EntryLength)..]);

    /// <summary>Whether the response repeats the code that a request names.</summary>
    internal static bool RepeatsCode(ReadOnlySpan<byte> request) =>
        request.Length > 1 && LengthOf((Report)(request[1] & SubFunction.ValueBits)) == 6;

    private static int? LengthOf(Report report) => report switch
    {
        Report.NumberByStatusMask or Report.CodesByStatusMask => 3,
        Report.SnapshotByCode or Report.ExtendedDataByCode => 6,
        Report.SupportedCodes => 2,
        _ => null,
    };

    private static void WriteEntry(Span<byte> bytes, StoredCode entry)
    {
        entry.Code.Write(bytes);
        bytes[CodeLength] = (byte)entry.Status;
    }

    private static StoredCode ReadEntry(ReadOnlySpan<byte> bytes) =>
        new(TroubleCode.ReadThree(bytes), (TroubleCodeStatus)bytes[CodeLength]);
}
