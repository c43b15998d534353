using EolSequencer.Model.Expressions;
using EolSequencer.Model.Sequences;
using EolSequencer.Model.Values;

namespace EolSequencer.Engine.Actions;

/// <summary><c>compute</c>: a value from readings taken now and from results.</summary>
internal static class ComputeAction
{
    public static async ValueTask<AttemptEnd> RunAsync(Attempt attempt, StepAction.Compute compute)
    {
        var (values, channel, missing) = await attempt.SampleAsync(compute.Expression);
        if (channel is not null)
        {
            return await attempt.MissingAsync(channel, attempt.Run.Device(channel.Role).Kind.Channels[channel.Channel], missing);
        }

        var value = attempt.Scope.Evaluate(compute.Expression, values);
        if (attempt.IsOver) throw new ExpressionFault($"the value came after the limit of {Attempt.Text(attempt.Within!.Value)}");
        if (value is NumberValue { Unit: null } bare && compute.Unit is not null) value = bare with { Unit = compute.Unit };
        return attempt.Found(value, attempt.Run.Now);
    }
}
