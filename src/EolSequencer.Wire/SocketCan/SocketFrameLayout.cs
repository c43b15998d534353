using System.Runtime.InteropServices;
using EolSequencer.Wire.Can;

namespace EolSequencer.Wire.SocketCan;

/// <summary>
/// The bytes of a frame as raw CAN sockets of Linux take and give them: <c>struct can_frame</c> (16 bytes) and <c>struct
/// canfd_frame</c> (72 bytes), the identifier in the byte order of the machine.
/// </summary>
/// <remarks>
/// Source: include/uapi/linux/can.h (layout and flags) and include/uapi/linux/can/error.h (error frames).
/// </remarks>
public static class SocketFrameLayout
{
    /// <summary>Size of <c>struct can_frame</c>.</summary>
    public const int ClassicalSize = 16;

    /// <summary>Size of <c>struct canfd_frame</c>.</summary>
    public const int FdSize = 72;

    private const int LengthAt = 4;
    private const int FlagsAt = 5;
    private const int DataAt = 8;

    private const uint ExtendedFlag = 0x8000_0000;
    private const uint RemoteFlag = 0x4000_0000;
    private const uint ErrorFlag = 0x2000_0000;

    private const byte BitRateSwitch = 0x01;
    private const byte IsFd = 0x04;

    /// <summary>Writes a frame.</summary>
    /// <param name="bytes">At least <see cref="FdSize"/> bytes.</param>
    /// <returns>How many were written: 16 or 72.</returns>
    public static int Write(in CanFrame frame, Span<byte> bytes)
    {
        var size = frame.IsFd ? FdSize : ClassicalSize;
        bytes[..size].Clear();
        var id = frame.Id.Value | (frame.IsExtended ? ExtendedFlag : 0);
        MemoryMarshal.Write(bytes, id);
        bytes[LengthAt] = (byte)frame.Data.Length;
        if (frame.IsFd) bytes[FlagsAt] = (byte)(IsFd | (frame.HasBitRateSwitch ? BitRateSwitch : 0));
        frame.Data.Span.CopyTo(bytes[DataAt..]);
        return size;
    }

    /// <summary>Reads what a socket has given.</summary>
    /// <param name="bytes">16 or 72 bytes; copied where they are kept.</param>
    public static SocketFrame Read(ReadOnlySpan<byte> bytes)
    {
        if (bytes.Length is not (ClassicalSize or FdSize)) return new SocketFrame { Fault = $"{bytes.Length} bytes are no frame" };
        var marked = MemoryMarshal.Read<uint>(bytes);
        var isFd = bytes.Length == FdSize;
        var length = bytes[LengthAt];
        if ((marked & ErrorFlag) != 0) return ReadErrors(marked, bytes);
        if ((marked & RemoteFlag) != 0) return new SocketFrame { IsRemote = true };
        var number = marked & CanId.ExtendedMax;
        var isExtended = (marked & ExtendedFlag) != 0;
        if (!isExtended && number > CanId.BaseMax) return new SocketFrame { Fault = $"{number:X} is no identifier of 11 bits" };
        if (isFd ? !DataLength.Fits(length) : length > CanFrame.ClassicalMax) return new SocketFrame { Fault = $"no frame holds {length} bytes" };
        var id = isExtended ? CanId.Extended(number) : CanId.Base(number);
        var data = bytes.Slice(DataAt, length).ToArray();
        return new SocketFrame { Data = isFd ? CanFrame.Fd(id, data, (bytes[FlagsAt] & BitRateSwitch) != 0) : CanFrame.Classical(id, data) };
    }

    private static SocketFrame ReadErrors(uint marked, ReadOnlySpan<byte> bytes)
    {
        const uint Controller = 0x004, Protocol = 0x008, Acknowledge = 0x020, BusOff = 0x040, Restarted = 0x100;
        var errors = BusErrors.None;
        var data = bytes[DataAt..];
        ControllerState? state = null;
        if ((marked & Acknowledge) != 0) errors |= BusErrors.Acknowledge;
        if ((marked & Protocol) != 0) errors |= ProtocolErrors(data[2], data[3]);
        if ((marked & Controller) != 0)
        {
            if ((data[1] & 0x01) != 0) errors |= BusErrors.ReceiveOverflow;
            if ((data[1] & 0x02) != 0) errors |= BusErrors.TransmitOverflow;
            if ((data[1] & 0x40) != 0) state = ControllerState.Active;
            if ((data[1] & 0x0C) != 0) state = ControllerState.Warning;
            if ((data[1] & 0x30) != 0) state = ControllerState.Passive;
        }

        if ((marked & Restarted) != 0) state = ControllerState.Active;
        if ((marked & BusOff) != 0) state = ControllerState.BusOff;
        return new SocketFrame { Errors = errors, State = state };
    }

    /// <param name="kind">data[2], what went wrong.</param>
    /// <param name="place">data[3], where in the frame; 08 is the checksum, 19 the acknowledgement.</param>
    private static BusErrors ProtocolErrors(byte kind, byte place)
    {
        const byte AnyBit = 0x01 | 0x08 | 0x10, Form = 0x02, Stuff = 0x04;
        var errors = BusErrors.None;
        if ((kind & Form) != 0) errors |= BusErrors.Form;
        if ((kind & Stuff) != 0) errors |= BusErrors.Stuff;
        if (place == 0x08) errors |= BusErrors.Checksum;
        else if (place == 0x19) errors |= BusErrors.Acknowledge;
        else if ((kind & AnyBit) != 0) errors |= BusErrors.Bit;
        return errors;
    }
}
