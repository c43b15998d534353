using EolSequencer.Wire.Can;

namespace EolSequencer.Devices.Can;

/// <summary>Who listens on a link that hands on every arrival, by identifier.</summary>
internal sealed class FrameListeners
{
    private readonly Dictionary<CanId, Entry[]> _byId = [];

    /// <summary>Hands frames of an identifier to a listener until disposed.</summary>
    public IDisposable Add(CanId id, ICanListener listener)
    {
        var entry = new Entry(this, id, listener);
        _byId[id] = _byId.TryGetValue(id, out var others) ? [.. others, entry] : [entry];
        return entry;
    }

    /// <summary>Hands a frame on to whoever listens at this moment.</summary>
    public void Hand(in CanFrame frame, long stamp)
    {
        // The list of a moment is never changed, so a listener may end its listening or another's.
        if (!_byId.TryGetValue(frame.Id, out var entries)) return;
        foreach (var entry in entries)
        {
            if (!entry.HasEnded) entry.Listener.Received(frame, stamp);
        }
    }

    private sealed class Entry(FrameListeners all, CanId id, ICanListener listener) : IDisposable
    {
        public ICanListener Listener => listener;

        public bool HasEnded { get; private set; }

        public void Dispose()
        {
            if (HasEnded) return;
            HasEnded = true;
            var left = Array.FindAll(all._byId[id], other => other != this);
            if (left.Length > 0) all._byId[id] = left;
            else all._byId.Remove(id);
        }
    }
}
