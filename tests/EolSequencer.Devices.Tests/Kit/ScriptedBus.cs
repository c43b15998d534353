using EolSequencer.Model.Waiting;
using EolSequencer.Simulators.Time;
using EolSequencer.Wire.Can;

namespace EolSequencer.Devices.Tests.Kit;

/// <summary>A bus with one peer whose frames are written down: each sent frame may set off answers after a time.</summary>
internal sealed class ScriptedBus(VirtualTime time) : ICanPort
{
    private readonly List<(CanId Id, ICanListener Listener)> _listeners = [];
    private readonly List<(string Sent, double AfterMs, string[] Frames)> _script = [];

    public LinkState State { get; private set; } = LinkState.Up;

    public bool LeavesOutRepeats => false;

    public event Action<LinkChange>? LinkChanged;

    /// <summary>Every frame that went out, with its moment in milliseconds.</summary>
    public List<(double AtMs, string Frame)> Sent { get; } = [];

    /// <summary>How long a frame waits before it is on the bus.</summary>
    public TimeSpan Queueing { get; set; } = TimeSpan.FromMilliseconds(0.25);

    /// <summary>When this frame goes out (padding left out), these come back; each rule serves once.</summary>
    public ScriptedBus When(string sent, double afterMs, params string[] frames)
    {
        _script.Add((sent, afterMs, frames));
        return this;
    }

    public void Down()
    {
        State = LinkState.Down;
        LinkChanged?.Invoke(new LinkChange(State, time.GetTimestamp()));
    }

    public void Give(string frame, double afterMs = 0) => time.At(time.Now + TimeSpan.FromMilliseconds(afterMs), () =>
    {
        var parsed = CanFrame.Parse(frame);
        foreach (var (id, listener) in _listeners.ToArray())
        {
            if (id == parsed.Id) listener.Received(parsed, time.GetTimestamp());
        }
    });

    public async ValueTask<Transmission> SendAsync(CanFrame frame, CancellationToken cancel)
    {
        if (State != LinkState.Up) return new Transmission(State, time.GetTimestamp());
        await Pause.ForAsync(Queueing, time, cancel);
        var text = frame.ToString();
        Sent.Add((time.Now.TotalMilliseconds, text));
        var rules = _script.Where(rule => text.StartsWith(rule.Sent, StringComparison.Ordinal)).ToList();
        if (rules.Count > 0)
        {
            // All answers to one occurrence of a frame stand behind each other until the same frame is scripted again.
            _script.Remove(rules[0]);
            foreach (var answer in rules[0].Frames) Give(answer, rules[0].AfterMs);
        }

        return Transmission.Confirmed(time.GetTimestamp());
    }

    public IDisposable Listen(CanId id, ICanListener listener, Repeats repeats)
    {
        _listeners.Add((id, listener));
        return new Ending(() => _listeners.Remove((id, listener)));
    }

    private sealed class Ending(Action end) : IDisposable
    {
        public void Dispose() => end();
    }
}
