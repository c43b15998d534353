using EolSequencer.Wire.Can;

namespace EolSequencer.Simulators.Bus;

/// <summary>A participant's interest in everything; cyclic frames come by listenings of their own, which make them be sent.</summary>
internal sealed class ListeningToAll(SimulatedCanBus bus, BusPort port, ICanListener listener, IReadOnlyList<IDisposable> cyclic) : IDisposable
{
    private bool _hasEnded;

    /// <summary>A frame that is not cyclic.</summary>
    public void Hand(in CanFrame frame, BusPort from, long stamp)
    {
        if (!_hasEnded && from != port && port.State == LinkState.Up) listener.Received(frame, stamp);
    }

    public void Dispose()
    {
        if (_hasEnded) return;
        _hasEnded = true;
        foreach (var one in cyclic) one.Dispose();
        bus.Forget(this);
    }
}
