using System.Collections.Immutable;
using System.Text;
using EolSequencer.Wire.TextLines;

namespace EolSequencer.Wire.Scpi;

/// <summary>The fields of an answer: separated by commas, of which those in quotes and blocks are data.</summary>
/// <remarks>Source: IEEE 488.2-1992, 8.4 (response data separators) and 8.7 (response data elements).</remarks>
public static class ScpiFields
{
    private const byte LastAscii = 0x7E;

    /// <summary>The fields in order, blanks around them dropped; an empty answer has none.</summary>
    /// <param name="answer">Without its terminator.</param>
    /// <returns>A fault when a quote or a block does not end.</returns>
    public static Decoded<ImmutableArray<ReadOnlyMemory<byte>>> Split(ReadOnlyMemory<byte> answer)
    {
        var fields = ImmutableArray.CreateBuilder<ReadOnlyMemory<byte>>();
        var (from, at) = (0, 0);
        var bytes = answer.Span;
        while (at < bytes.Length)
        {
            if (bytes[at] == (byte)',')
            {
                fields.Add(Trimmed(answer[from..at]));
                from = ++at;
                continue;
            }

            var step = ElementLength(bytes[at..], isFirst: bytes[from..at].Trim((byte)' ').IsEmpty);
            if (step == 0) return Decoded<ImmutableArray<ReadOnlyMemory<byte>>>.Faulty($"'{ControlBytes.Show(bytes)}' has a quote or block without an end");
            at += step;
        }

        if (fields.Count > 0 || !bytes.Trim((byte)' ').IsEmpty) fields.Add(Trimmed(answer[from..]));
        return fields.ToImmutable();
    }

    /// <summary>What a field says as text: a quoted string without its quotes, anything else as it is.</summary>
    /// <returns>A fault when a byte is no printable ASCII character.</returns>
    /// <remarks>Source: IEEE 488.2-1992, 8.7.8: a quote inside a string stands twice.</remarks>
    public static Decoded<string> Text(ReadOnlySpan<byte> field)
    {
        if (field.IndexOfAnyExceptInRange((byte)' ', LastAscii) is var odd and >= 0)
        {
            return Decoded<string>.Faulty($"'{ControlBytes.Show(field)}' has a byte that is no text, at place {odd + 1}");
        }

        var text = Encoding.ASCII.GetString(field);
        if (field is not [(byte)'"' or (byte)'\'', ..]) return text;
        return field.Length > 1 && QuotedLength(field) == field.Length
            ? text[1..^1].Replace(new string(text[0], 2), text[..1], StringComparison.Ordinal)
            : Decoded<string>.Faulty($"'{text}' does not end where its quote does");
    }

    /// <summary>A text in quotes, those inside doubled.</summary>
    public static string Quote(string text) => $"\"{text.Replace("\"", "\"\"", StringComparison.Ordinal)}\"";

    /// <summary>Yes or no: 1 and 0, or ON and OFF.</summary>
    /// <remarks>Source: SCPI-1999 volume 1, 7.3 (boolean program data; queries answer 1 or 0).</remarks>
    public static Decoded<bool> Truth(ReadOnlySpan<byte> field) => Encoding.ASCII.GetString(field).Trim().ToUpperInvariant() switch
    {
        "1" or "+1" or "ON" => true,
        "0" or "+0" or "OFF" => false,
        _ => Decoded<bool>.Faulty($"'{ControlBytes.Show(field)}' is neither 1 nor 0"),
    };

    private static ReadOnlyMemory<byte> Trimmed(ReadOnlyMemory<byte> field) => field.Span is [BlockData.Mark, ..] ? field : field.Trim((byte)' ');

    /// <summary>How many bytes belong together from here on; 0: something does not end.</summary>
    private static int ElementLength(ReadOnlySpan<byte> rest, bool isFirst)
    {
        if (!isFirst) return 1;
        if (rest[0] is (byte)'"' or (byte)'\'') return QuotedLength(rest);
        if (rest is [BlockData.Mark, (byte)'0', ..]) return rest.Length;
        if (!BlockData.TryReadHead(rest, out var head, out var length)) return 1;
        return head + length <= rest.Length ? head + length : 0;
    }

    private static int QuotedLength(ReadOnlySpan<byte> rest)
    {
        for (var at = 1; at < rest.Length; at++)
        {
            if (rest[at] != rest[0]) continue;
            if (at + 1 < rest.Length && rest[at + 1] == rest[0]) at++;
            else return at + 1;
        }

        return 0;
    }
}
