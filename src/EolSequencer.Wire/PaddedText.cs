using System.Globalization;
using System.Text;

namespace EolSequencer.Wire;

/// <summary>ASCII text in a field that may be longer than the text: padded at its end with 00, FF or blanks.</summary>
public static class PaddedText
{
    private const byte Blank = 0x20;
    private const byte LastPrintable = 0x7E;

    private static ReadOnlySpan<byte> Padding => [0x00, 0xFF, Blank];

    /// <summary>The text without its padding; it may be empty.</summary>
    /// <returns>A fault when a byte before the padding is no printable ASCII character; nothing is dropped inside a text.</returns>
    public static Decoded<string> Read(ReadOnlySpan<byte> field) => Text(field.TrimEnd(Padding));

    /// <summary>The text without its padding where only one byte is padding, so that another is a fault.</summary>
    public static Decoded<string> Read(ReadOnlySpan<byte> field, byte padding) => Text(field.TrimEnd(padding));

    private static Decoded<string> Text(ReadOnlySpan<byte> text)
    {
        var illegal = text.IndexOfAnyExceptInRange(Blank, LastPrintable);
        return illegal < 0
            ? Encoding.ASCII.GetString(text)
            : Decoded<string>.Faulty($"illegal byte {text[illegal].ToString("X2", CultureInfo.InvariantCulture)} in a text, at place {illegal + 1}");
    }

    /// <summary>Fills a field with a text and padding behind it.</summary>
    /// <param name="field">All of it is written.</param>
    /// <param name="text">Printable ASCII, no longer than the field.</param>
    /// <param name="padding">The byte that fills the rest.</param>
    /// <exception cref="ArgumentException">The text does not fit, or has another character.</exception>
    public static void Write(Span<byte> field, ReadOnlySpan<char> text, byte padding = 0x00)
    {
        if (text.Length > field.Length || text.ContainsAnyExceptInRange((char)Blank, (char)LastPrintable))
        {
            throw new ArgumentException($"'{text}' is no text of at most {field.Length} ASCII characters", nameof(text));
        }

        field[Encoding.ASCII.GetBytes(text, field)..].Fill(padding);
    }
}
