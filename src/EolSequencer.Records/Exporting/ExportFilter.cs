using EolSequencer.Model.Events;

namespace EolSequencer.Records.Exporting;

/// <summary>Which runs are exported; what is null is not asked about. Oldest first.</summary>
public sealed record ExportFilter
{
    /// <summary>Those that count, or rehearsals: every line says which.</summary>
    public RunMode Mode { get; init; } = RunMode.Production;

    /// <summary>Identification number of the vehicle, exactly.</summary>
    public string? Vin { get; init; }

    public string? Station { get; init; }

    /// <summary>The first day on which a run began, by the clock of its plant.</summary>
    public DateOnly? From { get; init; }

    /// <summary>The last such day, it included.</summary>
    public DateOnly? To { get; init; }
}
