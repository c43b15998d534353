using System.Collections.Immutable;
using EolSequencer.Wire.TextLines;

namespace EolSequencer.Wire.Scpi;

/// <summary>
/// Puts answers together from bytes that come in any pieces. An answer ends at the terminator; one inside block data of
/// definite length ends nothing.
/// </summary>
/// <param name="end">What the instrument ends its answers with; with LF, a CR before it is dropped.</param>
public sealed class ScpiReceiver(ImmutableArray<byte> end)
{
    /// <summary>The longest answer that is waited for, in bytes.</summary>
    public const int Longest = 16 << 20;

    private byte[] _bytes = new byte[256];
    private int _count;
    private int _looked;
    private int _blockEnd;

    /// <summary>What has come of the next answer so far.</summary>
    public ReadOnlySpan<byte> Pending => _bytes.AsSpan(0, _count);

    /// <summary>Takes bytes over; ask <see cref="TryTake"/> until it has nothing.</summary>
    public void Add(ReadOnlySpan<byte> bytes)
    {
        if (_count + bytes.Length > _bytes.Length) Array.Resize(ref _bytes, Math.Max(2 * _bytes.Length, _count + bytes.Length));
        bytes.CopyTo(_bytes.AsSpan(_count));
        _count += bytes.Length;
    }

    /// <summary>Forgets what has come of the next answer.</summary>
    public void Clear() => (_count, _looked, _blockEnd) = (0, 0, 0);

    /// <summary>The next whole answer without its terminator; it may be empty. A fault when it is longer than <see cref="Longest"/>.</summary>
    /// <returns>False: none is whole yet.</returns>
    public bool TryTake(out Decoded<byte[]> answer)
    {
        answer = default;
        while (_looked < _count)
        {
            var rest = Pending[_looked..];
            if (rest.StartsWith(end.AsSpan()))
            {
                answer = Take(_looked);
                return true;
            }

            var step = Step(rest);
            if (step == 0 || _looked + step > _count) break;
            _looked += step;
            if (step > 1) _blockEnd = _looked;
        }

        if (_count <= Longest) return false;
        answer = Decoded<byte[]>.Faulty($"{_count} bytes without an end: {ControlBytes.Show(Pending)}");
        Clear();
        return true;
    }

    /// <summary>How many bytes hold no terminator for certain: a whole block or one byte; 0: that is not known yet.</summary>
    private int Step(ReadOnlySpan<byte> rest)
    {
        // A terminator of which the first byte has come may still be one.
        if (rest.Length < end.Length && end.AsSpan().StartsWith(rest)) return 0;
        if (rest[0] != BlockData.Mark || !IsAtElement()) return 1;
        if (BlockData.TryReadHead(rest, out var head, out var length)) return length <= Longest ? head + length : 1;
        return MayBecomeHead(rest) ? 0 : 1;
    }

    /// <summary>A block begins an answer or stands behind a separator; anywhere else a # is text.</summary>
    private bool IsAtElement() => _looked == 0 || _bytes[_looked - 1] is (byte)',' or (byte)';' or (byte)' ';

    private static bool MayBecomeHead(ReadOnlySpan<byte> rest) => rest switch
    {
        [_] => true,
        [_, >= (byte)'1' and <= (byte)'9', ..] => rest.Length < 2 + rest[1] - '0' && !rest[2..].ContainsAnyExceptInRange((byte)'0', (byte)'9'),
        _ => false,
    };

    private byte[] Take(int length)
    {
        var own = end is [LineEnd.LineFeed] && EndsWithStrayReturn(Pending[..length]) ? length - 1 : length;
        var answer = _bytes.AsSpan(0, own).ToArray();
        var rest = length + end.Length;
        _bytes.AsSpan(rest, _count - rest).CopyTo(_bytes);
        (_count, _looked, _blockEnd) = (_count - rest, 0, 0);
        return answer;
    }

    /// <summary>Many devices send a carriage return and never mean it; as the last byte of a block it is data.</summary>
    private bool EndsWithStrayReturn(ReadOnlySpan<byte> answer) =>
        answer is [.., LineEnd.CarriageReturn] and not [BlockData.Mark, (byte)'0', ..] && answer.Length > _blockEnd;
}
