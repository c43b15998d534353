using System.Collections.Immutable;
using EolSequencer.Engine.Judging;
using EolSequencer.Engine.Planning;
using EolSequencer.Engine.Running;
using EolSequencer.Engine.Waiting;
using EolSequencer.Model.Devices;
using EolSequencer.Model.Events;
using EolSequencer.Model.Expressions;
using EolSequencer.Model.Judging;
using EolSequencer.Model.Ports;
using EolSequencer.Model.Sequences;
using EolSequencer.Model.Values;

namespace EolSequencer.Engine.Actions;

/// <summary>One attempt of one step: its clock, its time limit and what its actions share.</summary>
internal sealed class Attempt : IDisposable
{
    private readonly TimeLimits.Limit _limit;
    private readonly ImmutableArray<ReadingUsed>.Builder _readings = ImmutableArray.CreateBuilder<ReadingUsed>();

    public Attempt(RunServices run, PlannedStep planned, int number, RunScope scope, Halt halt)
    {
        (Run, Planned, Number, Scope, Halt) = (run, planned, number, scope, halt);
        Start = run.Now;
        Within = planned.Step.Within is { } within ? Operands.Duration(within, scope) : null;
        if (Within is not null) scope.TimeIsOver = () => IsOver;
        _limit = run.Limits.Begin(Within, halt.Token);
        Ends = _limit.Token;
    }

    public RunServices Run { get; }
    public PlannedStep Planned { get; }
    public Step Step => Planned.Step;
    public int Number { get; }
    public RunScope Scope { get; }
    public Halt Halt { get; }

    /// <summary>When the step's clock started.</summary>
    public long Start { get; }

    /// <summary>The time limit; null: none.</summary>
    public TimeSpan? Within { get; }

    /// <summary>True once the time limit has passed.</summary>
    public bool IsOver => Within is { } within && Run.Between(Start, Run.Now) > within;

    /// <summary>Cancelled at the time limit and when the part around it is halted.</summary>
    public CancellationToken Ends { get; }

    public ImmutableArray<ReadingUsed> Readings => _readings.DrainToImmutable();

    public void Dispose() => _limit.Dispose();

    /// <summary>The end that a cancelled wait means: halted, or else what the action says of its time limit.</summary>
    public AttemptEnd Cut(Func<AttemptEnd> atLimit) => Halt.IsRaised ? Cut() : atLimit();

    /// <summary>The end of an attempt that is halted.</summary>
    public AttemptEnd Cut() =>
        new(Halt.Kind == HaltKind.Lost ? Ending.Lost : Ending.Stopped, Run.Now) { Detail = Halt.Reason };

    /// <summary>One reading of a channel; a reading that does not come in time is missing as silent.</summary>
    public ValueTask<Reading> ReadAsync(ChannelUse use, ChannelDescription channel)
    {
        var device = Run.Device(use.Role);
        var request = new ReadRequest(channel, use.Index?.Resolve(Planned.Arguments), Start);
        return InTimeAsync(device.Device.ReadAsync(request, Ends), device, use, request.Index);
    }

    /// <summary>Waits for a device and keeps its reading; the step's time limit makes the reading missing, a halt throws.</summary>
    public async ValueTask<Reading> InTimeAsync(ValueTask<Reading> exchange, BoundDevice device, ChannelUse use, string? index)
    {
        Reading reading;
        try
        {
            reading = await exchange;
            Halt.Token.ThrowIfCancellationRequested();
            if (Within is { } within && Run.Between(Start, reading.Stamp) > within)
            {
                reading = Reading.None(MissingCause.Late, reading.Stamp, $"the answer came after the limit of {Text(within)}", reading.Raw);
            }
        }
        catch (OperationCanceledException) when (!Halt.IsRaised)
        {
            reading = SilentAtLimit();
        }

        Note(device, use, index, reading);
        return reading;
    }

    public Reading SilentAtLimit() =>
        Reading.None(MissingCause.Silent, Run.Now, $"no answer within {Text(Within ?? TimeSpan.Zero)}");

    /// <summary>Keeps a reading for the record.</summary>
    public void Note(BoundDevice device, ChannelUse use, string? index, in Reading reading)
    {
        device.Note(reading);
        var name = use.TextOf(index);
        var raw = reading.Raw.IsEmpty ? null : Convert.ToHexString(reading.Raw.Span);
        _readings.Add(new ReadingUsed(name, raw, Run.Log.MicrosecondsAt(reading.Stamp), device.Device.Instrument));
    }

    /// <summary>The readings of all channels an expression names, or the first that is missing.</summary>
    public async ValueTask<(Value?[] Values, ChannelUse? MissingChannel, Reading Missing)> SampleAsync(Expression expression)
    {
        var values = new Value?[expression.Channels.Length];
        for (var slot = 0; slot < values.Length; slot++)
        {
            var use = expression.Channels[slot];
            var reading = await ReadAsync(use, Run.Device(use.Role).Kind.Channels[use.Channel]);
            if (reading.Value is null) return (values, use, reading);
            values[slot] = reading.Value;
        }

        return (values, null, default);
    }

    /// <summary>The end of a step whose reading is missing.</summary>
    public async ValueTask<AttemptEnd> MissingAsync(ChannelUse use, ChannelDescription channel, Reading reading)
    {
        var cause = reading.Missing ?? MissingCause.Silent;
        var fails = Step.MissingFails || channel.MissingFails;
        var others = false;
        if (fails && cause.MaySpeakOfVehicle())
        {
            var request = new ReadRequest(channel, use.Index?.Resolve(Planned.Arguments), Start);
            others = await Run.Device(use.Role).Device.OthersAnswerAsync(request, reading.Stamp, Halt.Token);
        }

        return new AttemptEnd(Ending.Missing, reading.Stamp)
        {
            Cause = cause,
            AsMissing = cause.Measured(fails, others),
            Detail = reading.Detail,
        };
    }

    /// <summary>The end of a step that found a value: judged where something is expected of it.</summary>
    public AttemptEnd Found(Value value, long stamp) =>
        new(Step.Expect is null ? Ending.ValueTaken : Ending.ValueJudged, stamp) { Value = value, Criteria = [StepJudging.Value(Planned, Scope, "", value)] };

    public static string Text(TimeSpan time) => time.TotalSeconds >= 1
        ? string.Create(System.Globalization.CultureInfo.InvariantCulture, $"{time.TotalSeconds:0.###} s")
        : string.Create(System.Globalization.CultureInfo.InvariantCulture, $"{time.TotalMilliseconds:0.###} ms");
}
