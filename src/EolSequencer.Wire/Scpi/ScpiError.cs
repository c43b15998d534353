using System.Globalization;

namespace EolSequencer.Wire.Scpi;

/// <summary>An entry of an instrument's error queue, such as <c>-113,"Undefined header"</c>.</summary>
/// <param name="Code">0: the queue is empty; negative: from the standard; positive: the instrument's own.</param>
/// <param name="Text">What it says, as far as it says anything.</param>
/// <remarks>Source: SCPI-1999 volume 2, 21.8 (SYSTem:ERRor).</remarks>
public sealed record ScpiError(int Code, string Text)
{
    private const int Longest = 32_768;

    /// <summary>What the queue answers when there is nothing in it.</summary>
    public static ScpiError None { get; } = new(0, "No error");

    /// <summary>There is none.</summary>
    public bool IsNone => Code == 0;

    /// <summary>Reads an answer of the queue; the text may be missing.</summary>
    public static Decoded<ScpiError> Read(ReadOnlyMemory<byte> answer)
    {
        if (!ScpiFields.Split(answer).TryGet(out var fields) || fields.Length is not (1 or 2) || !ScpiFields.Text(fields[0].Span).TryGet(out var code)
            || !int.TryParse(code, NumberStyles.AllowLeadingSign, CultureInfo.InvariantCulture, out var number) || Math.Abs((long)number) > Longest)
        {
            return Decoded<ScpiError>.Faulty($"'{TextLines.ControlBytes.Show(answer.Span)}' is no entry of an error queue");
        }

        if (fields.Length == 1) return new ScpiError(number, "");
        var text = ScpiFields.Text(fields[1].Span);
        return text.Fault is { } fault ? Decoded<ScpiError>.Faulty(fault) : new ScpiError(number, text.Value);
    }

    /// <summary>As the queue says it.</summary>
    public override string ToString() => string.Create(CultureInfo.InvariantCulture, $"{Code},{ScpiFields.Quote(Text)}");
}
