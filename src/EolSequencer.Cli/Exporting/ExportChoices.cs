using EolSequencer.Model.Events;
using EolSequencer.Records.Exporting;

namespace EolSequencer.Cli.Exporting;

/// <summary>What was asked for on the command line of <c>eol export</c>.</summary>
internal sealed record ExportChoices
{
    public required ExportSubject Subject { get; init; }
    public required ExportForm Form { get; init; }

    /// <summary>Null: standard output.</summary>
    public string? File { get; init; }
    public bool Replace { get; init; }

    /// <summary>As typed.</summary>
    public string? From { get; init; }

    /// <summary>As typed.</summary>
    public string? To { get; init; }
    public string? Station { get; init; }
    public string? Vin { get; init; }
    public RunMode Mode { get; init; }
    public required string Data { get; init; }
}
