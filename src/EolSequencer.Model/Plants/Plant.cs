using System.Collections.Immutable;
using EolSequencer.Model.Judging;
using EolSequencer.Model.Texts;

namespace EolSequencer.Model.Plants;

/// <summary>What holds for a whole plant, as far as one vehicle type is concerned.</summary>
public sealed record Plant
{
    /// <summary>The plant's own id.</summary>
    public required string Id { get; init; }

    /// <summary>What people call it.</summary>
    public required LocalText Title { get; init; }

    /// <summary>Full path of its folder, for the pictures that steps name from there.</summary>
    public required string Folder { get; init; }

    /// <summary>Its time zone by IANA name, such as <c>Europe/Berlin</c>; known on this computer.</summary>
    public required string Zone { get; init; }

    /// <summary>Local time at which a production day begins.</summary>
    public required TimeOnly DayStarts { get; init; }

    /// <summary>The shifts in written order; empty when the plant names none.</summary>
    public ImmutableArray<Shift> Shifts { get; init; } = [];

    /// <summary>How values near an end of their window are decided unless a step says otherwise.</summary>
    public Decision Decision { get; init; } = Decision.Simple;

    /// <summary>How old an interrupted run may be and still be resumed.</summary>
    public required TimeSpan ResumeWithin { get; init; }

    /// <summary>What becomes of production runs with an instrument that is overdue for calibration.</summary>
    public OverdueRule OverdueInstruments { get; init; } = OverdueRule.Refuse;

    /// <summary>What becomes of production runs at a station whose check against its reference is due or was not passed.</summary>
    public OverdueRule OverdueCheck { get; init; } = OverdueRule.Refuse;

    /// <summary>The station kinds that a vehicle must pass, in order.</summary>
    public required ImmutableArray<RouteStop> Route { get; init; }

    /// <summary>The languages that its people read, as ISO 639-1 codes; empty: nothing is said.</summary>
    public ImmutableArray<string> Languages { get; init; } = [];

    /// <summary>What a plan counts for prompts and exchanges.</summary>
    public PlannedTimes Planned { get; init; } = new();

    /// <summary>Where the operator may stand, in written order.</summary>
    public ImmutableArray<PlantPlace> Places { get; init; } = [];

    /// <summary>The nonconformities that steps and people may name, in written order; empty: any.</summary>
    public ImmutableArray<CatalogueCode> Nonconformities { get; init; } = [];
}
