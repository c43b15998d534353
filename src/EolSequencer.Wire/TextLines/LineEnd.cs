using System.Collections.Immutable;

namespace EolSequencer.Wire.TextLines;

/// <summary>The bytes by which devices end a line of text.</summary>
public static class LineEnd
{
    public const byte CarriageReturn = 0x0D;
    public const byte LineFeed = 0x0A;

    public static ImmutableArray<byte> Lf { get; } = [LineFeed];

    public static ImmutableArray<byte> Cr { get; } = [CarriageReturn];

    public static ImmutableArray<byte> CrLf { get; } = [CarriageReturn, LineFeed];
}
