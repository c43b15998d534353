using EolSequencer.Wire.Can;

namespace EolSequencer.Simulators.Bus;

/// <summary>A participant's plug in a simulated bus, for the tester and for every control unit.</summary>
internal sealed class BusPort(SimulatedCanBus bus) : ICanPort
{
    private readonly List<PendingFrame> _queue = [];

    // Every watched signal is one; a list does not copy itself for each.
    private readonly List<Action<LinkChange>> _linkWatchers = [];

    public SimulatedCanBus Bus => bus;

    /// <inheritdoc/>
    public LinkState State { get; private set; } = LinkState.Up;

    /// <inheritdoc/>
    public bool LeavesOutRepeats => true;

    /// <inheritdoc/>
    public event Action<LinkChange>? LinkChanged
    {
        add => _linkWatchers.Add(value!);
        remove => _linkWatchers.Remove(value!);
    }

    /// <summary>The frame that goes out next; null when none waits.</summary>
    public PendingFrame? Next => _queue.Count > 0 ? _queue[0] : null;

    /// <inheritdoc/>
    public ValueTask<Transmission> SendAsync(CanFrame frame, CancellationToken cancel)
    {
        if (cancel.IsCancellationRequested) return ValueTask.FromCanceled<Transmission>(cancel);
        if (State != LinkState.Up) return ValueTask.FromResult(new Transmission(State, bus.Stamp));

        var pending = bus.Rent();
        var sending = pending.BeginAwaited(this, frame, cancel);
        _queue.Add(pending);
        bus.Offer(this);
        return sending;
    }

    /// <summary>Puts a frame on the bus and lets its owner know when it has gone out.</summary>
    public void Send(in CanFrame frame, IFrameOwner? owner = null, int what = 0)
    {
        if (State != LinkState.Up) return;
        var pending = bus.Rent();
        pending.BeginFor(this, frame, owner, what);
        _queue.Add(pending);
        bus.Offer(this);
    }

    /// <inheritdoc/>
    public IDisposable Listen(CanId id, ICanListener listener, Repeats repeats)
    {
        ArgumentNullException.ThrowIfNull(listener);
        return bus.Remember(new Listening(bus, this, id, listener, repeats));
    }

    /// <summary>Takes the link away or gives it back; whatever waits is told that it did not go out.</summary>
    public void Change(LinkState state)
    {
        if (State == state) return;
        State = state;
        var news = new LinkChange(state, bus.Stamp);
        if (state != LinkState.Up) DropAll(new Transmission(state, news.Stamp));
        foreach (var watcher in _linkWatchers.ToArray()) watcher(news);
    }

    /// <summary>Takes back what an owner has waiting; what is on the wire stays there.</summary>
    public void Withdraw(IFrameOwner owner)
    {
        for (var i = _queue.Count - 1; i >= 0; i--)
        {
            if (!_queue[i].Belongs(owner) || bus.IsOnWire(_queue[i])) continue;
            var pending = _queue[i];
            _queue.RemoveAt(i);
            pending.End(new Transmission(LinkState.Down, bus.Stamp));
        }
    }

    public void Withdraw(PendingFrame pending)
    {
        if (bus.IsOnWire(pending)) bus.Detach(pending);
        _queue.Remove(pending);
    }

    public void Dequeue(PendingFrame pending) => _queue.Remove(pending);

    private void DropAll(Transmission how)
    {
        bus.Abort(this);
        var waiting = _queue.ToArray();
        _queue.Clear();
        foreach (var pending in waiting) pending.End(how);
    }
}
