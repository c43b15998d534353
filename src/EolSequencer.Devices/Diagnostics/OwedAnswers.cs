using EolSequencer.Wire.Uds;

namespace EolSequencer.Devices.Diagnostics;

/// <summary>
/// Requests that were given up and may still be answered. A refusal repeats no more than the service, and a second read
/// of the same identifier is the same request, so the bytes alone do not tell such a late answer from the next one's.
/// </summary>
internal sealed class OwedAnswers
{
    /// <summary>The most that are remembered; the oldest is forgotten first.</summary>
    public const int Most = 8;

    private readonly List<(ReadOnlyMemory<byte> Request, long Until)> _owed = [];

    /// <summary>Whether nothing may be answered late.</summary>
    public bool IsEmpty => _owed.Count == 0;

    /// <summary>A request was given up; after a moment its answer is no longer to be expected.</summary>
    public void Add(ReadOnlyMemory<byte> request, long until)
    {
        if (_owed.Count == Most) _owed.RemoveAt(0);
        _owed.Add((request, until));
    }

    /// <summary>
    /// Whether a message may be the answer of a request given up before; the oldest such one then counts as answered.
    /// "Busy" settles nothing: a unit says so to the next request just because it still works on the one before.
    /// </summary>
    public bool Settle(ReadOnlySpan<byte> message)
    {
        for (var at = 0; at < _owed.Count; at++)
        {
            var kind = ResponseMatch.Of(_owed[at].Request.Span, message).Kind;
            if (kind is AnswerKind.Stray or AnswerKind.Pending) continue;
            if (kind != AnswerKind.Busy) _owed.RemoveAt(at);
            return true;
        }

        return false;
    }

    /// <summary>Forgets those whose answer is no longer to be expected.</summary>
    public void Forget(long now)
    {
        for (var at = _owed.Count - 1; at >= 0; at--)
        {
            if (_owed[at].Until < now) _owed.RemoveAt(at);
        }
    }

    /// <summary>A newer request was answered, and control units answer in order: nothing older will come.</summary>
    public void Clear() => _owed.Clear();
}
