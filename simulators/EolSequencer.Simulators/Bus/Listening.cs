using EolSequencer.Wire.Can;

namespace EolSequencer.Simulators.Bus;

/// <summary>One participant's interest in one identifier.</summary>
internal sealed class Listening(SimulatedCanBus bus, BusPort port, CanId id, ICanListener listener, Repeats repeats) : IDisposable
{
    public BusPort Port => port;

    public CanId Id => id;

    public Repeats Repeats => repeats;

    /// <summary>Whether a frame has arrived since the listening began; before that there is no sender to fall silent.</summary>
    public bool HasHeard { get; private set; }

    public bool HasEnded { get; private set; }

    public void Hand(in CanFrame frame, long stamp)
    {
        if (HasEnded) return;
        HasHeard = true;
        listener.Received(frame, stamp);
    }

    public void Silence(long lastStamp)
    {
        if (HasEnded || !HasHeard) return;
        HasHeard = false;
        listener.Silenced(id, lastStamp);
    }

    public void Dispose()
    {
        if (HasEnded) return;
        HasEnded = true;
        bus.Forget(this);
    }
}
