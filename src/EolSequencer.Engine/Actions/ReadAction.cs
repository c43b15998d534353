using System.Collections.Immutable;
using EolSequencer.Engine.Judging;
using EolSequencer.Model.Events;
using EolSequencer.Model.Judging;
using EolSequencer.Model.Ports;
using EolSequencer.Model.Sequences;
using EolSequencer.Model.Values;

namespace EolSequencer.Engine.Actions;

/// <summary><c>read</c>: one reading, or one of every index, each judged for itself.</summary>
internal static class ReadAction
{
    public static async ValueTask<AttemptEnd> RunAsync(Attempt attempt, StepAction.Read read)
    {
        if (!attempt.Planned.Indexes.IsEmpty) return await ReadAllAsync(attempt, read);
        var reading = await attempt.ReadAsync(read.Channel, read.Description);
        return reading.Value is { } value
            ? attempt.Found(value, reading.Stamp)
            : await attempt.MissingAsync(read.Channel, read.Description, reading);
    }

    private static async ValueTask<AttemptEnd> ReadAllAsync(Attempt attempt, StepAction.Read read)
    {
        var indexes = attempt.Planned.Indexes;
        var readings = await ReadEachAsync(attempt, read, indexes);
        var criteria = ImmutableArray.CreateBuilder<CriterionResult>(indexes.Length);
        var values = ImmutableArray.CreateBuilder<(string, Value)>(indexes.Length);
        AttemptEnd? missing = null;
        for (var at = 0; at < indexes.Length; at++)
        {
            if (readings[at].Value is { } value)
            {
                values.Add((indexes[at], value));
                criteria.Add(StepJudging.Value(attempt.Planned, attempt.Scope, indexes[at], value));
                continue;
            }

            var end = await attempt.MissingAsync(read.Channel, read.Description, readings[at]);
            criteria.Add(StepJudging.Missing(attempt.Planned, indexes[at], end.AsMissing));
            if (missing is null || end.AsMissing > missing.AsMissing) missing = end;
        }

        var stamp = readings.Max(reading => reading.Stamp);
        var ending = missing is not null ? Ending.Missing : attempt.Planned.Expect is null ? Ending.ValueTaken : Ending.ValueJudged;
        return new AttemptEnd(ending, stamp)
        {
            ByIndex = values.ToImmutable(),
            Criteria = criteria.ToImmutable(),
            Cause = missing?.Cause,
            AsMissing = missing?.AsMissing ?? Verdict.Error,
            Detail = missing?.Detail,
        };
    }

    private static async ValueTask<IReadOnlyList<Reading>> ReadEachAsync(Attempt attempt, StepAction.Read read, ImmutableArray<string> indexes)
    {
        var device = attempt.Run.Device(read.Channel.Role);
        IReadOnlyList<Reading> readings;
        try
        {
            var request = new ReadRequest(read.Description, null, attempt.Start);
            readings = await device.Device.ReadEachAsync(request, indexes, attempt.Ends);
            attempt.Halt.Token.ThrowIfCancellationRequested();
        }
        catch (OperationCanceledException) when (!attempt.Halt.IsRaised)
        {
            readings = [.. indexes.Select(_ => attempt.SilentAtLimit())];
        }

        for (var at = 0; at < indexes.Length; at++) attempt.Note(device, read.Channel, indexes[at], readings[at]);
        return readings;
    }
}
