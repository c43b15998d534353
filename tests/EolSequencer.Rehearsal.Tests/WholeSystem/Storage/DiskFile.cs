using EolSequencer.Simulators.Randomness;

namespace EolSequencer.Rehearsal.Tests.WholeSystem.Storage;

/// <summary>A file of a simulated disk: what is on it for good, and what was given to it since the last sync.</summary>
internal sealed class DiskFile(byte[] safe)
{
    private readonly List<Change> _given = [];
    private byte[] _safe = safe;
    private int _safeLength = safe.Length;

    /// <summary>Its length, as the program sees it.</summary>
    public long Length { get; private set; } = safe.Length;

    public void Write(long offset, ReadOnlySpan<byte> bytes)
    {
        _given.Add(new Change(offset, bytes.ToArray()));
        Length = Math.Max(Length, offset + bytes.Length);
    }

    public void Truncate(long length)
    {
        _given.Add(new Change(length, null));
        Length = length;
    }

    public void Sync()
    {
        foreach (var change in _given) Apply(change);
        _given.Clear();
    }

    /// <summary>What is there when the program is gone: everything that the operating system was given.</summary>
    public byte[] WithAllGiven()
    {
        Sync();
        return _safe[.._safeLength];
    }

    /// <summary>What is there after a power loss: of what was not synced each write is there, is not, or is cut off somewhere.</summary>
    public byte[] AfterPowerLoss(RandomStream chance)
    {
        foreach (var change in _given)
        {
            switch (chance.Pick(3))
            {
                case 0: break;
                case 1: Apply(change); break;
                default: Apply(change.Bytes is { } bytes ? change with { Bytes = bytes[..chance.Pick(bytes.Length + 1)] } : change); break;
            }
        }

        _given.Clear();
        return _safe[.._safeLength];
    }

    private void Apply(Change change)
    {
        if (change.Bytes is not { } bytes)
        {
            SetLength((int)change.Offset);
            return;
        }

        if (change.Offset + bytes.Length > _safeLength) SetLength((int)change.Offset + bytes.Length);
        bytes.CopyTo(_safe, (int)change.Offset);
    }

    private void SetLength(int length)
    {
        if (length > _safe.Length) Array.Resize(ref _safe, Math.Max(length, 2 * _safe.Length));
        if (length > _safeLength) _safe.AsSpan(_safeLength, length - _safeLength).Clear();
        _safeLength = length;
    }

    /// <summary>A write, or without bytes a cut at the offset.</summary>
    private sealed record Change(long Offset, byte[]? Bytes);
}
