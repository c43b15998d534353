using System.Buffers;
using System.Collections.Immutable;
using System.Globalization;
using System.Text;
using EolSequencer.Wire.Can;

namespace EolSequencer.Wire.SerialCan;

/// <summary>
/// CAN in ASCII on a serial line: <c>t4563112233</c> is frame 456 with three bytes, <c>T</c> has an identifier of eight digits,
/// <c>r</c> and <c>R</c> are remote frames. A line ends with a carriage return.
/// </summary>
/// <remarks>
/// Source: the form as the serial-line CAN driver of Linux documents it (drivers/net/can/slcan/slcan-core.c): frames, bit rates,
/// errors (<c>e</c>) and states (<c>s</c>). It knows classical frames only.
/// </remarks>
public static class SerialCanText
{
    /// <summary>The most characters of a line, its end not counted: a 29-bit frame of eight bytes and a time of four digits.</summary>
    public const int MostCharacters = 30;

    /// <summary>Ends a line that was done or holds something.</summary>
    public const byte CarriageReturn = 0x0D;

    /// <summary>Ends a line that refuses something.</summary>
    public const byte Bell = 0x07;

    private static readonly SearchValues<byte> HexDigits = SearchValues.Create("0123456789ABCDEFabcdef"u8);

    /// <summary>The bit rates that have a command, in the order of their numbers.</summary>
    public static ImmutableArray<int> Rates { get; } = [10_000, 20_000, 50_000, 100_000, 125_000, 250_000, 500_000, 800_000, 1_000_000];

    /// <summary>Takes part in the bus from now on.</summary>
    public static byte[] Open { get; } = "O\r"u8.ToArray();

    /// <summary>Leaves the bus.</summary>
    public static byte[] Close { get; } = "C\r"u8.ToArray();

    /// <summary>Sets the bit rate of a closed interface.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The rate is none of <see cref="Rates"/>.</exception>
    public static byte[] Speed(int rate)
    {
        var number = Rates.IndexOf(rate);
        ArgumentOutOfRangeException.ThrowIfNegative(number, nameof(rate));
        return Encoding.ASCII.GetBytes(string.Create(CultureInfo.InvariantCulture, $"S{number}\r"));
    }

    /// <summary>A data frame with the end of its line.</summary>
    /// <exception cref="ArgumentException">A CAN FD frame: this form has none.</exception>
    public static byte[] Write(in CanFrame frame)
    {
        if (frame.IsFd) throw new ArgumentException("the serial-line form has classical frames only", nameof(frame));
        var data = frame.Data.Span;
        var line = new byte[(frame.IsExtended ? 9 : 4) + 1 + (2 * data.Length) + 1];
        line[0] = (byte)(frame.IsExtended ? 'T' : 't');
        var at = 1;
        for (var shift = frame.IsExtended ? 28 : 8; shift >= 0; shift -= 4) line[at++] = Digit((int)(frame.Id.Value >> shift) & 0xF);
        line[at++] = Digit(data.Length);
        foreach (var one in data)
        {
            line[at++] = Digit(one >> 4);
            line[at++] = Digit(one & 0xF);
        }

        line[at] = CarriageReturn;
        return line;
    }

    /// <summary>Reads a line without its end.</summary>
    public static SerialCanLine Read(ReadOnlySpan<byte> line, bool endsWithBell)
    {
        if (line.IsEmpty) return new SerialCanLine(endsWithBell ? SerialCanKind.Refused : SerialCanKind.Done);
        return (char)line[0] switch
        {
            't' or 'T' or 'r' or 'R' => ReadFrame(line),
            'z' or 'Z' when line.Length == 1 => new SerialCanLine(SerialCanKind.Sent),
            'e' => ReadErrors(line),
            's' when line.Length > 1 => ReadState(line),
            _ => IsText(line) ? new SerialCanLine(SerialCanKind.Other) { Text = TextOf(line) } : Garbled(line),
        };
    }

    internal static SerialCanLine Garbled(ReadOnlySpan<byte> line) => new(SerialCanKind.Garbled) { Text = TextOf(line) };

    private static SerialCanLine ReadFrame(ReadOnlySpan<byte> line)
    {
        var isExtended = line[0] is (byte)'T' or (byte)'R';
        var isRemote = line[0] is (byte)'r' or (byte)'R';
        var digits = isExtended ? 8 : 3;
        if (line.Length < digits + 2 || !TryHex(line.Slice(1, digits), out var id) || id > (isExtended ? CanId.ExtendedMax : CanId.BaseMax)) return Garbled(line);
        var length = line[digits + 1] - '0';
        if (length is < 0 or > CanFrame.ClassicalMax) return Garbled(line);
        var rest = line[(digits + 2)..];
        var count = isRemote ? 0 : length;

        // Behind the data some interfaces write the time in four digits.
        if (rest.Length != 2 * count && rest.Length != (2 * count) + 4) return Garbled(line);
        var data = count == 0 ? [] : new byte[count];
        for (var i = 0; i < count; i++)
        {
            if (!TryHex(rest.Slice(2 * i, 2), out var value)) return Garbled(line);
            data[i] = (byte)value;
        }

        if (rest.Length > 2 * count && !TryHex(rest[(2 * count)..], out _)) return Garbled(line);
        var frame = CanFrame.Classical(isExtended ? CanId.Extended(id) : CanId.Base(id), data);
        return new SerialCanLine(isRemote ? SerialCanKind.Remote : SerialCanKind.Frame) { Frame = frame };
    }

    private static SerialCanLine ReadErrors(ReadOnlySpan<byte> line)
    {
        if (line.Length < 2 || line[1] - '0' != line.Length - 2) return Garbled(line);
        var errors = BusErrors.None;
        foreach (var letter in line[2..])
        {
            var one = (char)letter switch
            {
                'a' => BusErrors.Acknowledge,
                'b' or 'B' => BusErrors.Bit,
                'c' => BusErrors.Checksum,
                'f' => BusErrors.Form,
                's' => BusErrors.Stuff,
                'o' => BusErrors.ReceiveOverflow,
                'O' => BusErrors.TransmitOverflow,
                _ => BusErrors.None,
            };
            if (one == BusErrors.None) return Garbled(line);
            errors |= one;
        }

        return new SerialCanLine(SerialCanKind.Errors) { Errors = errors };
    }

    /// <summary>A letter, then two counters of three digits.</summary>
    private static SerialCanLine ReadState(ReadOnlySpan<byte> line)
    {
        if (line.Length != 8 || line[2..].ContainsAnyExceptInRange((byte)'0', (byte)'9')) return Garbled(line);
        ControllerState? state = (char)line[1] switch
        {
            'a' => ControllerState.Active,
            'w' => ControllerState.Warning,
            'p' => ControllerState.Passive,
            'b' => ControllerState.BusOff,
            _ => null,
        };
        return state is { } known ? new SerialCanLine(SerialCanKind.State) { State = known } : Garbled(line);
    }

    private static bool TryHex(ReadOnlySpan<byte> digits, out uint value)
    {
        value = 0;
        // The framework takes zero bytes behind a number for nothing.
        return !digits.ContainsAnyExcept(HexDigits) && uint.TryParse(digits, NumberStyles.AllowHexSpecifier, CultureInfo.InvariantCulture, out value);
    }

    private static byte Digit(int value) => (byte)(value < 10 ? '0' + value : 'A' + value - 10);

    private static bool IsText(ReadOnlySpan<byte> line) => !line.ContainsAnyExceptInRange((byte)' ', (byte)'~');

    private static string TextOf(ReadOnlySpan<byte> line)
    {
        var text = new StringBuilder();
        foreach (var one in line) text.Append(one is >= (byte)' ' and <= (byte)'~' ? (char)one : '?');
        return text.ToString();
    }
}
