using System.Collections.Immutable;
using System.Text;

namespace EolSequencer.Wire.Scpi;

/// <summary>One command of a message: its header and what stands behind it.</summary>
/// <param name="Header">Such as <c>MEAS:CURR?</c>.</param>
/// <param name="Parameters">Separated by commas.</param>
public sealed record ScpiCommand(string Header, ImmutableArray<string> Parameters)
{
    /// <summary>It wants an answer.</summary>
    public bool IsQuery => Header.EndsWith('?');

    /// <summary>The commands of a message, separated by semicolons outside of quotes; each header is taken from the root.</summary>
    /// <param name="message">Without its terminator.</param>
    public static Decoded<ImmutableArray<ScpiCommand>> Read(ReadOnlySpan<byte> message)
    {
        var commands = ImmutableArray.CreateBuilder<ScpiCommand>();
        foreach (var unit in Units(Encoding.Latin1.GetString(message)))
        {
            var text = unit.Trim();
            if (text.Length == 0) continue;
            var blank = text.AsSpan().IndexOfAny(' ', '\t');
            var header = blank < 0 ? text : text[..blank];
            var parameters = ScpiFields.Split(Encoding.Latin1.GetBytes(blank < 0 ? "" : text[blank..]));
            if (parameters.Fault is { } fault) return Decoded<ImmutableArray<ScpiCommand>>.Faulty(fault);
            commands.Add(new ScpiCommand(header, [.. parameters.Value.Select(field => Encoding.Latin1.GetString(field.Span))]));
        }

        return commands.ToImmutable();
    }

    private static IEnumerable<string> Units(string text)
    {
        var from = 0;
        var quote = '\0';
        for (var at = 0; at < text.Length; at++)
        {
            if (quote != '\0') quote = text[at] == quote ? '\0' : quote;
            else if (text[at] is '"' or '\'') quote = text[at];
            else if (text[at] == ';')
            {
                yield return text[from..at];
                from = at + 1;
            }
        }

        yield return text[from..];
    }
}
