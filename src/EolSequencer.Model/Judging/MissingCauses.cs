namespace EolSequencer.Model.Judging;

/// <summary>Words and verdicts of missing readings.</summary>
public static class MissingCauses
{
    /// <summary>The word that records and reports use, such as <c>link-down</c>.</summary>
    public static string Word(this MissingCause cause) => cause switch
    {
        MissingCause.LinkDown => "link-down",
        MissingCause.Silent => "silent",
        MissingCause.Refused => "refused",
        MissingCause.InvalidMarker => "invalid-marker",
        MissingCause.Stale => "stale",
        MissingCause.Overload => "overload",
        MissingCause.NotFinite => "not-finite",
        MissingCause.ShortAnswer => "short-answer",
        MissingCause.Late => "late",
        _ => throw new ArgumentOutOfRangeException(nameof(cause), cause, "there are nine causes"),
    };

    /// <summary>The cause of a word; false for any other text.</summary>
    public static bool TryParse(string word, out MissingCause cause)
    {
        foreach (var candidate in Enum.GetValues<MissingCause>())
        {
            if (candidate.Word() == word)
            {
                cause = candidate;
                return true;
            }
        }

        cause = default;
        return false;
    }

    /// <summary>Whether <c>if-missing: fail</c> can make this cause the vehicle's fault at all.</summary>
    public static bool MaySpeakOfVehicle(this MissingCause cause) =>
        cause is MissingCause.Silent or MissingCause.Refused or MissingCause.InvalidMarker;

    /// <summary>The measured verdict of a missing reading.</summary>
    /// <param name="cause">Why it is missing.</param>
    /// <param name="ifMissingFail">The channel or step says <c>if-missing: fail</c>.</param>
    /// <param name="linkAnsweredOther">
    /// After the fault the same link answered somebody else. A control unit that is dead on a healthy bus is the vehicle's
    /// fault; a dead bus is not.
    /// </param>
    public static Verdict Measured(this MissingCause cause, bool ifMissingFail, bool linkAnsweredOther) =>
        ifMissingFail && linkAnsweredOther && cause.MaySpeakOfVehicle() ? Verdict.Fail : Verdict.Error;
}
