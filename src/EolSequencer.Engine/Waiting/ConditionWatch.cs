using EolSequencer.Engine.Judging;
using EolSequencer.Engine.Running;
using EolSequencer.Model.Expressions;
using EolSequencer.Model.Ports;
using EolSequencer.Model.Values;

namespace EolSequencer.Engine.Waiting;

/// <summary>
/// Knows at every moment whether conditions are true, false or unknown: it evaluates them at each new reading of a
/// channel they name, with the newest valid reading of the others. Readings from before its start do not count.
/// </summary>
internal sealed class ConditionWatch : IDisposable
{
    private readonly Dictionary<(string Role, string Channel, string? Index), Source> _sources = [];
    private readonly List<Condition> _conditions = [];
    private readonly RunServices _run;
    private readonly RunScope _scope;
    private readonly Action<long> _changed;
    private readonly long _start;

    /// <param name="changed">Called with the stamp of each reading after the conditions have been evaluated anew.</param>
    public ConditionWatch(RunServices run, RunScope scope, string step, long start, Action<long> changed)
    {
        (_run, _scope, _start, _changed) = (run, scope, start, changed);
        Step = step;
    }

    /// <summary>The step whose live values these are.</summary>
    public string Step { get; }

    /// <summary>The newest reading that was no value, for the report of an unknown condition.</summary>
    public (ChannelUse Channel, Reading Reading)? NewestMissing { get; private set; }

    /// <summary>Adds a condition; call before <see cref="Begin"/>.</summary>
    public Condition Add(Expression expression, Arguments arguments)
    {
        var condition = new Condition(expression);
        for (var slot = 0; slot < expression.Channels.Length; slot++)
        {
            var use = expression.Channels[slot];
            var key = (use.Role, use.Channel, use.Index?.Resolve(arguments));
            if (!_sources.TryGetValue(key, out var source)) _sources[key] = source = new Source(this, use, key.Item3);
            source.Feeds.Add((condition, slot));
        }

        _conditions.Add(condition);
        return condition;
    }

    /// <summary>Begins to listen; conditions that name no channel are known at once.</summary>
    public void Begin(TimeSpan? every)
    {
        foreach (var condition in _conditions) condition.Evaluate(_scope);
        foreach (var source in _sources.Values) source.Begin(every);
        if (_conditions.Exists(condition => condition.IsTrue is not null)) _changed(_start);
    }

    public void Dispose()
    {
        foreach (var source in _sources.Values) source.Subscription?.Dispose();
    }

    /// <summary>One condition and its present truth.</summary>
    internal sealed class Condition(Expression expression)
    {
        private readonly Value?[] _values = new Value?[expression.Channels.Length];
        private readonly int[] _edges = new int[expression.Channels.Length];

        /// <summary>Null: unknown.</summary>
        public bool? IsTrue { get; private set; }

        /// <summary>Why it could not be evaluated though all readings were there; null when it could.</summary>
        public string? Fault { get; private set; }

        public void Set(int slot, Value? value, int edges)
        {
            _values[slot] = value;
            _edges[slot] = edges;
        }

        public void Evaluate(RunScope scope)
        {
            Fault = null;
            IsTrue = null;
            foreach (var value in _values)
            {
                if (value is null) return;
            }

            try
            {
                IsTrue = scope.Evaluate(expression, _values, _edges) is TruthValue { IsTrue: true };
            }
            catch (ExpressionFault fault)
            {
                Fault = fault.Message;
            }
        }
    }

    private sealed class Source(ConditionWatch watch, ChannelUse use, string? index) : IReadingListener
    {
        private readonly string _name = use.ToString();
        private bool? _truth;
        private int _edges;

        public List<(Condition Condition, int Slot)> Feeds { get; } = [];

        public IDisposable? Subscription { get; private set; }

        public void Begin(TimeSpan? every)
        {
            var device = watch._run.Device(use.Role);
            var channel = device.Kind.Channels[use.Channel];
            Subscription = device.Device.Watch(
                new ReadRequest(channel, index, watch._start), every ?? channel.Every ?? RunServices.UsualPoll, this);
        }

        public void Received(in Reading reading)
        {
            if (reading.Stamp < watch._start) return;
            if (reading.Value is null) watch.NewestMissing = (use, reading);
            CountEdge(reading.Value);
            watch._run.Live.Show(watch.Step, _name, reading.Value);
            foreach (var (condition, slot) in Feeds)
            {
                condition.Set(slot, reading.Value, _edges);
                condition.Evaluate(watch._scope);
            }

            watch._changed(reading.Stamp);
        }

        // A gap in the readings is no change: what counts is the next value against the one before the gap.
        private void CountEdge(Value? value)
        {
            if (value is not TruthValue { IsTrue: var truth }) return;
            if (_truth is { } before && before != truth) _edges++;
            _truth = truth;
        }
    }
}
