namespace EolSequencer.Wire.SerialCan;

/// <summary>
/// Makes lines of bytes that come in any portions. What is no line is handed on as garbled and ends where the line ends, so that it
/// costs no other one.
/// </summary>
public sealed class SerialCanReader
{
    private const byte LineFeed = 0x0A;

    private readonly byte[] _line = new byte[SerialCanText.MostCharacters];
    private int _length;
    private bool _isTooLong;

    /// <summary>Whether a line has begun and not ended.</summary>
    public bool IsInLine => _length > 0;

    /// <summary>Takes the next byte.</summary>
    /// <param name="line">The line that it ends.</param>
    /// <returns>True when it ends one. A line feed, which some interfaces add, counts for nothing.</returns>
    public bool Take(byte next, out SerialCanLine line)
    {
        line = default;
        if (next == LineFeed) return false;
        if (next is not (SerialCanText.CarriageReturn or SerialCanText.Bell))
        {
            if (_length < _line.Length) _line[_length++] = next;
            else _isTooLong = true;
            return false;
        }

        line = _isTooLong ? SerialCanText.Garbled(_line) : SerialCanText.Read(_line.AsSpan(0, _length), next == SerialCanText.Bell);
        Clear();
        return true;
    }

    /// <summary>Throws away a line that will not be completed, because the link was lost.</summary>
    public void Clear() => (_length, _isTooLong) = (0, false);
}
