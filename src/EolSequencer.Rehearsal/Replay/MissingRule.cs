using EolSequencer.Engine.Judging;
using EolSequencer.Model.Judging;
using EolSequencer.Model.Sequences;

namespace EolSequencer.Rehearsal.Replay;

/// <summary>What a missing reading says under another <c>if-missing</c>.</summary>
internal static class MissingRule
{
    public const string NotAsked = "whether others answered on the link was not asked";

    /// <summary>Whether silent, refused and an invalid marker speak of the vehicle.</summary>
    public static bool Fails(Step step) => step.MissingFails || step.Action switch
    {
        StepAction.Read read => read.Description.MissingFails,
        StepAction.Sample sample => sample.Description.MissingFails,
        _ => false,
    };

    /// <summary>The verdict; null when the record does not tell.</summary>
    public static Verdict? Of(Verdict recorded, MissingCause cause, bool failed, bool fails)
    {
        if (failed == fails || !cause.MaySpeakOfVehicle()) return recorded;
        return fails ? null : Verdict.Error;
    }

    /// <summary>The end of an attempt whose reading was missing.</summary>
    public static Replayable EndOf(Verdict recorded, MissingCause cause, Step old, Step now, LimitChange limit, TimeSpan took)
    {
        if (limit.IsLonger && cause is MissingCause.Silent or MissingCause.Late) return Replayable.Undecidable("nothing came in time, and the limit is longer now");
        return Of(recorded, cause, Fails(old), Fails(now)) is { } verdict
            ? new RecordedEnd(Ending.Missing, took) { AsMissing = verdict }
            : Replayable.Undecidable(NotAsked);
    }
}
