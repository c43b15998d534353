namespace EolSequencer.Wire.TextLines;

/// <summary>
/// Puts framed texts together from bytes that come in any pieces: a text ends at its end or length, never at a pause.
/// </summary>
public sealed class TextReceiver
{
    private readonly TextFraming _framing;
    private byte[] _bytes = new byte[256];
    private int _count;

    /// <exception cref="ArgumentException">The framing has a fault.</exception>
    public TextReceiver(TextFraming framing)
    {
        if (framing.Fault is { } fault) throw new ArgumentException(fault, nameof(framing));
        _framing = framing;
    }

    /// <summary>What has come of the next text so far.</summary>
    public ReadOnlySpan<byte> Pending => _bytes.AsSpan(0, _count);

    /// <summary>Takes bytes over; ask <see cref="TryTake"/> until it has nothing.</summary>
    public void Add(ReadOnlySpan<byte> bytes)
    {
        if (_count + bytes.Length > _bytes.Length) Array.Resize(ref _bytes, Math.Max(2 * _bytes.Length, _count + bytes.Length));
        bytes.CopyTo(_bytes.AsSpan(_count));
        _count += bytes.Length;
    }

    /// <summary>Forgets what has come of the next text.</summary>
    public void Clear() => _count = 0;

    /// <summary>The next whole text.</summary>
    /// <param name="text">Its body without framing, or what is wrong with it.</param>
    /// <returns>False: none is whole yet.</returns>
    /// <remarks>
    /// Bytes in front of a start are dropped and told as a fault. A line feed as end swallows a carriage return before
    /// it, which many devices send and never mean.
    /// </remarks>
    public bool TryTake(out Decoded<byte[]> text)
    {
        if (_count == 0)
        {
            text = default;
            return false;
        }

        return TryDropStray(out text) || TryTakeWhole(out text) || TryDropTooLong(out text);
    }

    private bool TryDropStray(out Decoded<byte[]> text)
    {
        text = default;
        if (_framing.Start.IsEmpty) return false;
        var start = _framing.Start.AsSpan();
        var at = Pending.IndexOf(start);
        if (at == 0) return false;

        // The last bytes may be the first ones of a start.
        var stray = at > 0 ? at : _count - Begun(start);
        if (stray == 0) return false;
        text = Decoded<byte[]>.Faulty($"bytes that belong to no text: {ControlBytes.Show(Pending[..stray])}");
        Drop(stray);
        return true;
    }

    private int Begun(ReadOnlySpan<byte> start)
    {
        var length = Math.Min(start.Length - 1, _count);
        while (length > 0 && !Pending[^length..].SequenceEqual(start[..length])) length--;
        return length;
    }

    private bool TryTakeWhole(out Decoded<byte[]> text)
    {
        text = default;
        var from = _framing.Start.Length;
        if (_count < from) return false;
        var checksum = _framing.Checksum;
        var before = checksum is { IsBehindEnd: false } ? checksum.Length : 0;
        var behind = checksum is { IsBehindEnd: true } ? checksum.Length : 0;
        var end = _framing.Length is { } length ? length + before : Pending[from..].IndexOf(_framing.End.AsSpan());
        if (end < 0 || from + end + _framing.End.Length + behind > _count) return false;

        var content = Pending.Slice(from, end);
        var tail = Pending[(from + end)..];
        text = Whole(content, before, tail[.._framing.End.Length], tail.Slice(_framing.End.Length, behind));
        Drop(from + end + _framing.End.Length + behind);
        return true;
    }

    private Decoded<byte[]> Whole(ReadOnlySpan<byte> content, int before, ReadOnlySpan<byte> end, ReadOnlySpan<byte> behind)
    {
        if (!end.SequenceEqual(_framing.End.AsSpan())) return Decoded<byte[]>.Faulty($"'{ControlBytes.Show(content)}' is followed by {ControlBytes.Show(end)} instead of {ControlBytes.Show(_framing.End.AsSpan())}");
        if (content.Length < before) return Decoded<byte[]>.Faulty($"'{ControlBytes.Show(content)}' is shorter than its checksum");
        if (_framing.Length is null && before == 0 && _framing.End is [LineEnd.LineFeed] && content is [.., LineEnd.CarriageReturn]) content = content[..^1];
        var body = content[..^before];
        var sent = before > 0 ? content[^before..] : behind;
        return _framing.Checksum?.FaultOf(_framing, body, sent) is { } fault
            ? Decoded<byte[]>.Faulty($"{fault} at '{ControlBytes.Show(body)}'")
            : body.ToArray();
    }

    private bool TryDropTooLong(out Decoded<byte[]> text)
    {
        text = default;
        if (_count <= _framing.Start.Length + TextFraming.LongestBody + (_framing.Checksum?.Length ?? 0) + _framing.End.Length) return false;
        text = Decoded<byte[]>.Faulty($"{_count} bytes without an end: {ControlBytes.Show(Pending)}");
        Clear();
        return true;
    }

    private void Drop(int count)
    {
        _bytes.AsSpan(count, _count - count).CopyTo(_bytes);
        _count -= count;
    }
}
