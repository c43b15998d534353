using EolSequencer.Wire.Can;

namespace EolSequencer.Wire.Tests.Can;

/// <summary>
/// A second way to the length of a frame, slow and plain: write all bits of the frame format of ISO 11898-1 down,
/// stuff them one by one, count.
/// </summary>
internal static class BitByBit
{
    public static int Length(CanFrame frame)
    {
        var bits = Header(frame);
        foreach (var value in frame.Data.ToArray())
        {
            Append(bits, value, 8);
        }

        if (frame.IsFd)
        {
            var fixedBits = frame.Data.Length <= 16 ? 28 : 33;
            return bits.Count + Stuffed(bits[..^1]) + fixedBits + 9 + 3;
        }

        Append(bits, Crc(bits), 15);
        return bits.Count + Stuffed(bits) + 1 + 2 + 7 + 3;
    }

    private static List<bool> Header(CanFrame frame)
    {
        var bits = new List<bool>();
        var id = frame.Id.Value;
        Append(bits, 0, 1);
        if (frame.IsExtended)
        {
            Append(bits, id >> 18, 11);
            Append(bits, 0b11, 2);
            Append(bits, id & 0x3FFFF, 18);
            Append(bits, 0, 1);
        }
        else
        {
            Append(bits, id, 11);
            Append(bits, 0b00, 2);
        }

        if (frame.IsFd)
        {
            Append(bits, 0b10, 2);
            Append(bits, frame.HasBitRateSwitch ? 1u : 0u, 1);
            Append(bits, 0, 1);
        }
        else
        {
            Append(bits, 0, frame.IsExtended ? 2 : 1);
        }

        Append(bits, (uint)DataLength.CodeFor(frame.Data.Length), 4);
        return bits;
    }

    private static void Append(List<bool> bits, uint value, int count)
    {
        for (var i = count - 1; i >= 0; i--)
        {
            bits.Add(((value >> i) & 1) == 1);
        }
    }

    private static uint Crc(List<bool> bits)
    {
        var crc = 0u;
        foreach (var bit in bits)
        {
            var invert = bit != ((crc & 0x4000) != 0);
            crc = ((crc << 1) & 0x7FFF) ^ (invert ? 0x4599u : 0u);
        }

        return crc;
    }

    private static int Stuffed(List<bool> bits)
    {
        var (last, run, stuffed) = (true, 0, 0);
        foreach (var bit in bits)
        {
            run = bit == last ? run + 1 : 1;
            last = bit;
            if (run == 5)
            {
                (last, run) = (!last, 1);
                stuffed++;
            }
        }

        return stuffed;
    }
}
