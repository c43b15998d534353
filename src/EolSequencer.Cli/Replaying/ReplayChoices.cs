namespace EolSequencer.Cli.Replaying;

/// <summary>What was typed behind <c>eol replay</c>.</summary>
internal sealed record ReplayChoices
{
    public required string Data { get; init; }

    /// <summary>File of the sequence to judge by; null: the one that was recorded.</summary>
    public string? With { get; init; }

    /// <summary>Also what is not as it was written; then it is marked.</summary>
    public bool Unverified { get; init; }

    public bool AsJson { get; init; }
}
