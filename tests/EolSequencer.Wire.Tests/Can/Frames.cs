using CsCheck;
using EolSequencer.Wire.Can;

namespace EolSequencer.Wire.Tests.Can;

/// <summary>Random frames of all four formats, with long runs of equal bits as often as not.</summary>
internal static class Frames
{
    private static readonly int[] FdLengths = [0, 1, 2, 3, 4, 5, 6, 7, 8, 12, 16, 20, 24, 32, 48, 64];

    private static readonly Gen<CanId> Id = Gen.OneOf<CanId>(
        Gen.UInt[0, CanId.BaseMax].Select(CanId.Base),
        Gen.UInt[0, CanId.ExtendedMax].Select(CanId.Extended));

    private static readonly Gen<byte> Byte = Gen.OneOf<byte>(Gen.Byte, Gen.OneOf<byte>(0x00, 0xFF, 0xF0, 0x0F, 0x78, 0x87));

    public static Gen<CanFrame> Classical { get; } =
        Gen.Select(Id, Byte.Array[0, 8], (id, data) => CanFrame.Classical(id, data));

    public static Gen<CanFrame> Fd { get; } =
        from id in Id
        from length in Gen.OneOf(FdLengths)
        from data in Byte.Array[length]
        from switches in Gen.Bool
        select CanFrame.Fd(id, data, switches);

    public static Gen<CanFrame> Any { get; } = Gen.OneOf<CanFrame>(Classical, Fd);
}
