using EolSequencer.Model.Waiting;
using EolSequencer.Simulators.Time;
using EolSequencer.Wire.Can;

namespace EolSequencer.Devices.Tests.Kit;

/// <summary>A bus with peers whose frames are written down: each sent frame may set off answers after a time.</summary>
internal sealed class ScriptedBus(VirtualTime time) : ICanPort
{
    private readonly List<Listener> _listeners = [];
    private readonly List<Rule> _script = [];
    private CancellationTokenSource _linkLost = new();

    public LinkState State { get; private set; } = LinkState.Up;

    public bool LeavesOutRepeats { get; set; }

    public event Action<LinkChange>? LinkChanged;

    /// <summary>Every frame that went out, with its moment in milliseconds.</summary>
    public List<(double AtMs, string Frame)> Sent { get; } = [];

    /// <summary>The frames that went out to one identifier.</summary>
    public IEnumerable<string> SentTo(string id) => Sent.Select(sent => sent.Frame).Where(frame => frame.StartsWith(id + "#", StringComparison.Ordinal));

    /// <summary>How many listen at present.</summary>
    public int Listeners => _listeners.Count;

    /// <summary>How long a frame waits before it is on the bus.</summary>
    public TimeSpan Queueing { get; set; } = TimeSpan.FromMilliseconds(0.25);

    /// <summary>After so many frames nobody acknowledges any more, and what is sent waits for ever.</summary>
    public int AcknowledgedFrames { get; set; } = int.MaxValue;

    /// <summary>When a frame that begins like this goes out, these come back; a rule serves once, older ones first.</summary>
    public ScriptedBus When(string sent, double afterMs, params string[] frames) => Add(new Rule(sent, afterMs, frames, IsOnce: true));

    /// <summary>The same every time, when no other rule serves.</summary>
    public ScriptedBus Always(string sent, double afterMs, params string[] frames) => Add(new Rule(sent, afterMs, frames, IsOnce: false));

    public void Change(LinkState state)
    {
        State = state;
        if (state == LinkState.Up) _linkLost = new CancellationTokenSource();
        else _linkLost.Cancel();
        LinkChanged?.Invoke(new LinkChange(state, time.GetTimestamp()));
    }

    /// <summary>A frame from somebody else, some time from now.</summary>
    public void Give(string frame, double afterMs = 0) => time.At(time.Now + TimeSpan.FromMilliseconds(afterMs), () => Arrive(CanFrame.Parse(frame)));

    /// <summary>Frames that a link hands over in one go, before anybody who waits can go on.</summary>
    public void GiveTogether(double afterMs, params string[] frames) => time.At(time.Now + TimeSpan.FromMilliseconds(afterMs), () =>
    {
        foreach (var frame in frames) Arrive(CanFrame.Parse(frame));
    });

    /// <summary>A frame in a cycle.</summary>
    public void GiveEvery(string frame, double cycleMs, int times)
    {
        for (var at = 1; at <= times; at++) Give(frame, at * cycleMs);
    }

    /// <summary>A link that leaves out repeats says that the sender has stopped.</summary>
    public void Silence(string id, double lastMs)
    {
        foreach (var listener in _listeners.ToArray())
        {
            if (listener.Id == IdOf(id)) listener.Who.Silenced(listener.Id, TimeSpan.FromMilliseconds(lastMs).Ticks);
        }
    }

    public async ValueTask<Transmission> SendAsync(CanFrame frame, CancellationToken cancel)
    {
        if (State != LinkState.Up) return new Transmission(State, time.GetTimestamp());
        using var ends = CancellationTokenSource.CreateLinkedTokenSource(cancel, _linkLost.Token);
        try
        {
            await Pause.ForAsync(Sent.Count < AcknowledgedFrames ? Queueing : TimeSpan.FromDays(1), time, ends.Token);
        }
        catch (OperationCanceledException) when (!cancel.IsCancellationRequested)
        {
            return new Transmission(State, time.GetTimestamp());
        }

        var text = frame.ToString();
        Sent.Add((time.Now.TotalMilliseconds, text));
        var rule = _script.OrderBy(rule => rule.IsOnce ? 0 : 1).FirstOrDefault(rule => text.StartsWith(rule.Sent, StringComparison.Ordinal));
        if (rule is null) return Transmission.Confirmed(time.GetTimestamp());
        if (rule.IsOnce) _script.Remove(rule);
        foreach (var answer in rule.Frames) Give(answer, rule.AfterMs);
        return Transmission.Confirmed(time.GetTimestamp());
    }

    public IDisposable Listen(CanId id, ICanListener listener, Repeats repeats)
    {
        var entry = new Listener(id, listener);
        _listeners.Add(entry);
        return new Ending(() => _listeners.Remove(entry));
    }

    private static CanId IdOf(string id) => CanFrame.Parse(id + "#").Id;

    private ScriptedBus Add(Rule rule)
    {
        _script.Add(rule);
        return this;
    }

    private void Arrive(CanFrame frame)
    {
        if (State != LinkState.Up) return;
        foreach (var listener in _listeners.ToArray())
        {
            if (listener.Id == frame.Id && _listeners.Contains(listener)) listener.Who.Received(frame, time.GetTimestamp());
        }
    }

    private sealed record Rule(string Sent, double AfterMs, string[] Frames, bool IsOnce);

    private sealed class Listener(CanId id, ICanListener who)
    {
        public CanId Id => id;

        public ICanListener Who => who;
    }

    private sealed class Ending(Action end) : IDisposable
    {
        public void Dispose() => end();
    }
}
