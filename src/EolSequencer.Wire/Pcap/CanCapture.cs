using System.Buffers.Binary;
using EolSequencer.Wire.Can;

namespace EolSequencer.Wire.Pcap;

/// <summary>Writes frames into a capture file that network analysers read.</summary>
/// <remarks>
/// Source: the classic capture format (draft-ietf-opsawg-pcap) with nanosecond stamps, link type 227
/// (LINKTYPE_CAN_SOCKETCAN, tcpdump.org link-layer header types): eight bytes of header, the identifier in them
/// big-endian, then the data bytes. The stream stays open and is the caller's.
/// </remarks>
public sealed class CanCapture
{
    private const uint NanosecondMagic = 0xA1B2_3C4D;
    private const ushort MajorVersion = 2;
    private const ushort MinorVersion = 4;
    private const int FileHeaderLength = 24;
    private const int RecordHeaderLength = 16;
    private const int FrameHeaderLength = 8;
    private const int LinkType = 227;
    private const int NanosecondsPerTick = 100;

    private const byte BitRateSwitchFlag = 0x01;
    private const byte FdFlag = 0x04;

    private readonly Stream _file;

    /// <summary>Begins a capture file.</summary>
    /// <param name="file">Where to write; its file header is written now.</param>
    public CanCapture(Stream file)
    {
        _file = file;
        Span<byte> header = stackalloc byte[FileHeaderLength];
        header.Clear();
        BinaryPrimitives.WriteUInt32LittleEndian(header, NanosecondMagic);
        BinaryPrimitives.WriteUInt16LittleEndian(header[4..], MajorVersion);
        BinaryPrimitives.WriteUInt16LittleEndian(header[6..], MinorVersion);
        BinaryPrimitives.WriteUInt32LittleEndian(header[16..], FrameHeaderLength + CanFrame.FdMax);
        BinaryPrimitives.WriteUInt32LittleEndian(header[20..], LinkType);
        _file.Write(header);
    }

    /// <summary>Adds a frame.</summary>
    /// <param name="frame">The frame.</param>
    /// <param name="at">When it ended, counted from 1970 or simply from the begin of the capture; not negative.</param>
    public void Write(in CanFrame frame, TimeSpan at)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(at, TimeSpan.Zero);
        var data = frame.Data.Span;
        Span<byte> record = stackalloc byte[RecordHeaderLength + FrameHeaderLength + data.Length];
        record.Clear();
        var length = FrameHeaderLength + data.Length;
        BinaryPrimitives.WriteUInt32LittleEndian(record, (uint)(at.Ticks / TimeSpan.TicksPerSecond));
        BinaryPrimitives.WriteUInt32LittleEndian(record[4..], (uint)(at.Ticks % TimeSpan.TicksPerSecond) * NanosecondsPerTick);
        BinaryPrimitives.WriteInt32LittleEndian(record[8..], length);
        BinaryPrimitives.WriteInt32LittleEndian(record[12..], length);

        var header = record[RecordHeaderLength..];
        BinaryPrimitives.WriteUInt32BigEndian(header, frame.Id.Marked);
        header[4] = (byte)data.Length;
        header[5] = (byte)((frame.IsFd ? FdFlag : 0) | (frame.HasBitRateSwitch ? BitRateSwitchFlag : 0));
        data.CopyTo(header[FrameHeaderLength..]);
        _file.Write(record);
    }
}
