namespace EolSequencer.Cli.Operators;

/// <summary>Who answers the prompts.</summary>
internal static class OperatorChoice
{
    public const string Simulated = "simulated";
    public const string Terminal = "terminal";
    public const string Script = "script";

    /// <summary>What is wrong with a choice; null when nothing is.</summary>
    public static string? Fault(IReadOnlyList<string> words) => words switch
    {
        [Simulated] or [Terminal] or [Script, _] => null,
        [Script] => "--operator script wants a file behind it",
        _ => $"'{string.Join(' ', words)}' is no operator: write simulated, terminal or script FILE",
    };
}
