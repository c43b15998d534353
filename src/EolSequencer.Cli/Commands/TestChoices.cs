namespace EolSequencer.Cli.Commands;

/// <summary>What was typed behind <c>eol test</c>.</summary>
internal sealed record TestChoices
{
    public required IReadOnlyList<string> Paths { get; init; }

    /// <summary>Empty: all tests.</summary>
    public required IReadOnlyList<string> Names { get; init; }

    /// <summary>Null: the record is thrown away.</summary>
    public required string? Data { get; init; }

    /// <summary>Null: no file for a build server.</summary>
    public required string? JUnit { get; init; }
    public required bool AsJson { get; init; }
}
