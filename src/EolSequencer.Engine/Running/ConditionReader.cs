using System.Collections.Immutable;
using EolSequencer.Engine.Planning;
using EolSequencer.Engine.Waiting;
using EolSequencer.Model.Events;
using EolSequencer.Model.Judging;
using EolSequencer.Model.Ports;
using EolSequencer.Model.Sequences;
using EolSequencer.Model.Values;

namespace EolSequencer.Engine.Running;

/// <summary>Reads the conditions of a run and writes them down in one event. What is missing is recorded as missing; nothing fails by it.</summary>
internal sealed class ConditionReader(RunServices run, Halt halt)
{
    /// <summary>What those of one device may take together: one that is silent does not cost the others.</summary>
    public static readonly TimeSpan Most = TimeSpan.FromSeconds(2);

    public async Task ReadAsync(ImmutableArray<RunCondition> conditions)
    {
        var found = new Dictionary<RunCondition, ImmutableArray<Condition>>();
        foreach (var device in conditions.GroupBy(condition => condition.Channel.Role))
        {
            using var limit = run.Limits.Begin(Most, halt.Token);
            foreach (var condition in device) found[condition] = await ReadAsync(condition, limit.Token);
        }

        ImmutableArray<Condition> all = [.. conditions.SelectMany(condition => found[condition])];
        if (!halt.IsRaised && !all.IsEmpty) run.Log.Append((n, at) => new ConditionsRead { N = n, At = at, Conditions = all });
    }

    private async Task<ImmutableArray<Condition>> ReadAsync(RunCondition condition, CancellationToken ends)
    {
        var found = ImmutableArray.CreateBuilder<Condition>();
        var (use, channel) = (condition.Channel, condition.Description);
        if (channel.When is { } when && !OrderScope.IsTrue(when, run.Order)) return [];
        var wanted = use.Index?.Resolve(Model.Expressions.Arguments.None);
        var indexes = channel.Indexes
            .Where(index => (wanted ?? index.Value) == index.Value && (index.When is null || OrderScope.IsTrue(index.When, run.Order)))
            .Select(index => index.Value).ToList();
        if (channel.Indexes.IsEmpty) Add(condition.Name, await ReadAsync(condition, null, ends));
        foreach (var index in indexes) Add(use.Index is null ? $"{condition.Name}[{index}]" : condition.Name, await ReadAsync(condition, index, ends));
        return found.DrainToImmutable();

        void Add(string name, Reading reading)
        {
            var device = run.Device(use.Role);
            device.Note(reading);
            found.Add(ConditionOf(name, reading, device.Device.Instrument));
        }
    }

    private async ValueTask<Reading> ReadAsync(RunCondition condition, string? index, CancellationToken ends)
    {
        try
        {
            return await run.Device(condition.Channel.Role).Device.ReadAsync(new ReadRequest(condition.Description, index, run.Now), ends);
        }
        catch (OperationCanceledException)
        {
            return Reading.None(MissingCause.Silent, run.Now, $"no answer within {Most.TotalSeconds} s for the conditions of a device");
        }
    }

    private static Condition ConditionOf(string name, in Reading reading, string? instrument) => reading.Value switch
    {
        null => new Condition(name, null, null, reading.Missing ?? MissingCause.Silent, instrument),
        NumberValue number => new Condition(name, NumberText.Of(number.Number), number.Unit?.Symbol, null, instrument),
        var other => new Condition(name, other.ToString(), null, null, instrument),
    };
}
