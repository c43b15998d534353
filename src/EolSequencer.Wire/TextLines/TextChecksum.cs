namespace EolSequencer.Wire.TextLines;

/// <summary>The checksum of a framed text.</summary>
/// <param name="Kind">How it is made.</param>
/// <param name="IsDigits">True: two hexadecimal digits for each byte; false: the bytes themselves.</param>
/// <param name="IsBehindEnd">True: it stands behind the end; false: between body and end.</param>
/// <param name="CoversStart">The start is summed up too.</param>
/// <param name="CoversEnd">The end is summed up too.</param>
public sealed record TextChecksum(ChecksumKind Kind, bool IsDigits, bool IsBehindEnd, bool CoversStart, bool CoversEnd)
{
    /// <summary>Bytes it takes in the text.</summary>
    public int Length => TextLines.Checksum.Length(Kind) * (IsDigits ? 2 : 1);

    internal byte[] Make(TextFraming framing, ReadOnlySpan<byte> body)
    {
        var sum = Sum(framing, body);
        return IsDigits ? System.Text.Encoding.ASCII.GetBytes(TextLines.Checksum.Digits(sum)) : sum;
    }

    /// <summary>What is wrong with a checksum as it was sent; null: nothing.</summary>
    internal string? FaultOf(TextFraming framing, ReadOnlySpan<byte> body, ReadOnlySpan<byte> sent)
    {
        var due = Sum(framing, body);
        var got = new byte[due.Length];
        if (!IsDigits) sent.CopyTo(got);
        else if (!TextLines.Checksum.TryReadDigits(sent, got)) return $"'{ControlBytes.Show(sent)}' is no checksum in hexadecimal digits";
        return got.AsSpan().SequenceEqual(due) ? null : $"checksum {TextLines.Checksum.Digits(got)} instead of {TextLines.Checksum.Digits(due)}";
    }

    private byte[] Sum(TextFraming framing, ReadOnlySpan<byte> body) => TextLines.Checksum.Of(
        Kind, [.. CoversStart ? framing.Start : [], .. body, .. CoversEnd ? framing.End : []]);
}
