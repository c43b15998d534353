using System.Buffers.Binary;
using EolSequencer.Wire.Can;

namespace EolSequencer.Wire.IsoTp;

/// <summary>Makes the frames of the transport protocol (ISO 15765-2:2016, 9.6).</summary>
internal static class FrameWriter
{
    /// <summary>The longest message of a single frame that goes out.</summary>
    public static int SingleMax(Route route, TransportOptions options) =>
        Pci.SingleMax(options.TransmitLength, route.PrefixLength);

    public static CanFrame Single(Route route, TransportOptions options, ReadOnlySpan<byte> message)
    {
        var isLong = message.Length > Pci.SingleMax(CanFrame.ClassicalMax, route.PrefixLength);
        var header = route.PrefixLength + (isLong ? 2 : 1);
        var data = Begin(route, options, header + message.Length);
        data[header - 1] = (byte)message.Length; // behind the 00 of the escape sequence when there is one
        message.CopyTo(data.AsSpan(header));
        return options.Frame(route.Id, data);
    }

    /// <summary>The head of a longer message; <paramref name="used"/> tells how much of it went in.</summary>
    public static CanFrame First(Route route, TransportOptions options, ReadOnlySpan<byte> message, out int used)
    {
        var data = Begin(route, options, options.TransmitLength);
        var at = route.PrefixLength;
        if (message.Length <= TransportOptions.ShortLengthMax)
        {
            BinaryPrimitives.WriteUInt16BigEndian(data.AsSpan(at), (ushort)(0x1000 | message.Length));
            at += 2;
        }
        else
        {
            BinaryPrimitives.WriteUInt16BigEndian(data.AsSpan(at), 0x1000);
            BinaryPrimitives.WriteUInt32BigEndian(data.AsSpan(at + 2), (uint)message.Length);
            at += 6;
        }

        used = data.Length - at;
        message[..used].CopyTo(data.AsSpan(at));
        return options.Frame(route.Id, data);
    }

    /// <summary>The next piece of a longer message.</summary>
    public static CanFrame Consecutive(Route route, TransportOptions options, int number, ReadOnlySpan<byte> rest, out int used)
    {
        var header = route.PrefixLength + 1;
        used = Math.Min(rest.Length, options.TransmitLength - header);
        var data = Begin(route, options, header + used);
        data[header - 1] = (byte)(0x20 | (number & 0xF));
        rest[..used].CopyTo(data.AsSpan(header));
        return options.Frame(route.Id, data);
    }

    public static CanFrame FlowControl(Route route, TransportOptions options, FlowStatus status)
    {
        var data = Begin(route, options, route.PrefixLength + 3);
        data[route.PrefixLength] = (byte)(0x30 | (int)status);
        data[route.PrefixLength + 1] = options.BlockSize;
        data[route.PrefixLength + 2] = options.SeparationTime;
        return options.Frame(route.Id, data);
    }

    /// <summary>The data bytes of a frame with the address in front, zeros for the content and padding behind it.</summary>
    private static byte[] Begin(Route route, TransportOptions options, int content)
    {
        var length = content > CanFrame.ClassicalMax ? DataLength.RoundUp(content)
            : options.Padding is null ? content
            : CanFrame.ClassicalMax;
        var data = new byte[length];
        data.AsSpan(content).Fill(options.Padding ?? TransportOptions.DefaultPadding);
        if (route.Prefix is { } prefix)
        {
            data[0] = prefix;
        }

        return data;
    }
}
