namespace EolSequencer.Records.Administration;

/// <summary>Something was not done, and nothing was changed.</summary>
/// <param name="Why">For people: what was found, what was expected, what to try. Never a secret.</param>
public sealed record Refused(Refusal Reason, string Why)
{
    internal static Refused Malformed(string why) => new(Refusal.Malformed, why);

    internal static Refused Unknown(string why) => new(Refusal.Unknown, why);

    internal static Refused NotAllowed(string why) => new(Refusal.NotAllowed, why);

    internal static Refused AgainstRule(string why) => new(Refusal.AgainstRule, why);
}

/// <summary>Why something was refused, as one word.</summary>
public enum Refusal
{
    /// <summary>A text is too long, empty, or holds what it must not.</summary>
    Malformed,

    /// <summary>There is nothing of that name.</summary>
    Unknown,

    /// <summary>The person could not be signed in, or has not the role.</summary>
    NotAllowed,

    /// <summary>A rule speaks against it as things are.</summary>
    AgainstRule,
}
