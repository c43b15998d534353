using System.Buffers.Binary;
using EolSequencer.Model.Values;

namespace EolSequencer.Wire.Modbus;

/// <summary>Numbers in registers: their type and the order of their bytes.</summary>
/// <param name="Type">What they are.</param>
/// <param name="Order">How their bytes arrive.</param>
public readonly record struct RegisterNumber(RegisterType Type, WordOrder Order)
{
    /// <summary>Bytes of one number: 2, 4 or 8.</summary>
    public int Length => Type switch
    {
        RegisterType.Int16 or RegisterType.UInt16 => 2,
        RegisterType.Int32 or RegisterType.UInt32 or RegisterType.Float32 => 4,
        _ => 8,
    };

    /// <summary>Registers of one number: 1, 2 or 4.</summary>
    public int Registers => Length / 2;

    /// <summary>True when it comes in binary floating point.</summary>
    public bool IsFloating => Type is RegisterType.Float32 or RegisterType.Float64;

    /// <summary>The bits of a number as they mean it, in the order ABCD, right-aligned.</summary>
    /// <param name="registers">As many as it has.</param>
    public ulong Bits(ReadOnlySpan<ushort> registers)
    {
        Span<byte> bytes = stackalloc byte[8];
        var number = Arranged(registers, bytes);
        ulong bits = 0;
        foreach (var one in number) bits = (bits << 8) | one;
        return bits;
    }

    /// <summary>The number.</summary>
    /// <param name="registers">As many as it has.</param>
    /// <returns>
    /// A fault for a floating number that is not finite or too large for any quantity here, or so small that only a wrong
    /// order or type explains it (below 1e-28 and not 0).
    /// </returns>
    public Decoded<decimal> Read(ReadOnlySpan<ushort> registers)
    {
        Span<byte> bytes = stackalloc byte[8];
        var number = Arranged(registers, bytes);
        return Type switch
        {
            RegisterType.Int16 => BinaryPrimitives.ReadInt16BigEndian(number),
            RegisterType.UInt16 => BinaryPrimitives.ReadUInt16BigEndian(number),
            RegisterType.Int32 => BinaryPrimitives.ReadInt32BigEndian(number),
            RegisterType.UInt32 => BinaryPrimitives.ReadUInt32BigEndian(number),
            RegisterType.Int64 => BinaryPrimitives.ReadInt64BigEndian(number),
            RegisterType.UInt64 => BinaryPrimitives.ReadUInt64BigEndian(number),
            RegisterType.Float32 => Finite(BinaryPrimitives.ReadSingleBigEndian(number)),
            _ => Finite(BinaryPrimitives.ReadDoubleBigEndian(number)),
        };
    }

    /// <summary>The registers of a number, which is rounded to a whole one where the type has no others.</summary>
    /// <returns>A fault when the type cannot hold it.</returns>
    public Decoded<ushort[]> Write(decimal number)
    {
        var bytes = new byte[Length];
        if (IsFloating) WriteFloating(bytes, number);
        else if (!TryWriteWhole(bytes, decimal.Round(number))) return Decoded<ushort[]>.Faulty($"{NumberText.Of(number)} does not fit into {Type}");
        WordOrders.Arrange(bytes, Order);
        return Pdu.Unpack(bytes);
    }

    private Span<byte> Arranged(ReadOnlySpan<ushort> registers, Span<byte> room)
    {
        if (registers.Length != Registers) throw new ArgumentException($"{registers.Length} registers instead of {Registers}", nameof(registers));
        for (var i = 0; i < registers.Length; i++) BinaryPrimitives.WriteUInt16BigEndian(room[(2 * i)..], registers[i]);
        var number = room[..Length];
        WordOrders.Arrange(number, Order);
        return number;
    }

    private static Decoded<decimal> Finite(float number) => Finite(
        FloatingNumber.TryFromSingle(number, out var value), value, isZero: number == 0, FormattableString.Invariant($"{number:R}"));

    private static Decoded<decimal> Finite(double number) => Finite(
        FloatingNumber.TryFromDouble(number, out var value), value, isZero: number == 0, FormattableString.Invariant($"{number:R}"));

    private static Decoded<decimal> Finite(bool isQuantity, decimal value, bool isZero, string text)
    {
        if (!isQuantity) return Decoded<decimal>.Faulty($"{text} is no quantity");
        return value == 0 && !isZero
            ? Decoded<decimal>.Faulty($"{text} is too small to be a quantity; is the order of its bytes right?")
            : value;
    }

    private void WriteFloating(Span<byte> bytes, decimal number)
    {
        if (Type == RegisterType.Float32) BinaryPrimitives.WriteSingleBigEndian(bytes, (float)number);
        else BinaryPrimitives.WriteDoubleBigEndian(bytes, (double)number);
    }

    private bool TryWriteWhole(Span<byte> bytes, decimal number)
    {
        var (least, most) = Range();
        if (number < least || number > most) return false;
        var bits = number < 0 ? unchecked((ulong)(long)number) : (ulong)number;
        for (var i = bytes.Length - 1; i >= 0; i--, bits >>= 8) bytes[i] = (byte)bits;
        return true;
    }

    private (decimal Least, decimal Most) Range() => Type switch
    {
        RegisterType.Int16 => (short.MinValue, short.MaxValue),
        RegisterType.UInt16 => (0, ushort.MaxValue),
        RegisterType.Int32 => (int.MinValue, int.MaxValue),
        RegisterType.UInt32 => (0, uint.MaxValue),
        RegisterType.Int64 => (long.MinValue, long.MaxValue),
        _ => (0, ulong.MaxValue),
    };
}
