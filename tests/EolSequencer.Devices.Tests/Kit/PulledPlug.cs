using EolSequencer.Wire.Can;

namespace EolSequencer.Devices.Tests.Kit;

/// <summary>A port whose plug can be pulled: nothing goes out, nothing comes in, and both sides of the change are told.</summary>
internal sealed class PulledPlug(ICanPort port, TimeProvider time) : ICanPort
{
    private CancellationTokenSource _pulled = new();

    public LinkState State { get; private set; } = LinkState.Up;

    public bool LeavesOutRepeats => port.LeavesOutRepeats;

    public event Action<LinkChange>? LinkChanged;

    public void Set(bool isUp)
    {
        State = isUp ? LinkState.Up : LinkState.Down;
        if (isUp) _pulled = new CancellationTokenSource();
        else _pulled.Cancel();
        LinkChanged?.Invoke(new LinkChange(State, time.GetTimestamp()));
    }

    public async ValueTask<Transmission> SendAsync(CanFrame frame, CancellationToken cancel)
    {
        if (State != LinkState.Up) return new Transmission(State, time.GetTimestamp());
        using var ends = CancellationTokenSource.CreateLinkedTokenSource(cancel, _pulled.Token);
        try
        {
            return await port.SendAsync(frame, ends.Token);
        }
        catch (OperationCanceledException) when (!cancel.IsCancellationRequested)
        {
            return new Transmission(LinkState.Down, time.GetTimestamp());
        }
    }

    public IDisposable Listen(CanId id, ICanListener listener, Repeats repeats) => port.Listen(id, new Plugged(this, listener), repeats);

    private sealed class Plugged(PulledPlug plug, ICanListener listener) : ICanListener
    {
        public void Received(in CanFrame frame, long stamp)
        {
            if (plug.State == LinkState.Up) listener.Received(frame, stamp);
        }

        public void Silenced(CanId id, long lastStamp)
        {
            if (plug.State == LinkState.Up) listener.Silenced(id, lastStamp);
        }
    }
}
