using EolSequencer.Model.Events;
using EolSequencer.Records.Canonical;

namespace EolSequencer.Records.Writing;

/// <summary>What the table <c>run</c> holds of a run from its first event.</summary>
internal sealed record RunRow(
    string Run,
    string Plant,
    string Station,
    long Number,
    string StationKind,
    string Vin,
    string Order,
    string VehicleType,
    string Sequence,
    int Revision,
    string Mode,
    bool IsPartial,
    string? RetestOf,
    string? Person,
    int Planned,
    string BegunUtc)
{
    public static RunRow Of(RunNumber run, RunBegun begun) => new(
        begun.Run,
        begun.Plant,
        run.Station,
        run.Number,
        begun.StationKind,
        begun.Order.Vin.Text,
        begun.Order.Id,
        begun.Order.VehicleType,
        begun.Sequence,
        begun.Revision,
        begun.Mode.Word(),
        !begun.OnlySteps.IsDefaultOrEmpty,
        begun.RetestOf,
        begun.Person,
        begun.Planned,
        UtcText.Of(begun.Wall));
}
