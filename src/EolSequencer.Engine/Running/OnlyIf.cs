using EolSequencer.Engine.Actions;
using EolSequencer.Model.Expressions;
using EolSequencer.Model.Judging;
using EolSequencer.Model.Values;

namespace EolSequencer.Engine.Running;

/// <summary>Decides an <c>only-if</c> from readings taken now and from results.</summary>
internal static class OnlyIf
{
    /// <summary>True, false, or null with the end of a step that could not be decided.</summary>
    public static async Task<(bool? Truth, AttemptEnd? Fault)> DecideAsync(Attempt attempt, Expression onlyIf)
    {
        try
        {
            var (values, channel, missing) = await attempt.SampleAsync(onlyIf);
            if (channel is null) return (attempt.Scope.Evaluate(onlyIf, values) is TruthValue { IsTrue: true }, null);
            return (null, new AttemptEnd(Ending.Missing, missing.Stamp)
            {
                Cause = missing.Missing,
                Detail = $"only-if could not be decided: {channel}: {missing.Detail}",
                Readings = attempt.Readings,
            });
        }
        catch (ExpressionFault fault)
        {
            return (null, new AttemptEnd(Ending.ExpressionFault, attempt.Run.Now) { Detail = $"only-if could not be decided: {fault.Message}" });
        }
    }
}
