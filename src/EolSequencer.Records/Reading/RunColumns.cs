using EolSequencer.Model.Judging;
using EolSequencer.Records.Canonical;

namespace EolSequencer.Records.Reading;

/// <summary>A row of the table <c>run</c> as the database gives it; the names are those of its columns.</summary>
internal sealed class RunColumns
{
    public const string All =
        """
        id AS Id, run AS Run, plant AS Plant, station AS Station, station_kind AS StationKind, vin AS Vin, order_id AS OrderId,
        vehicle_type AS VehicleType, sequence AS Sequence, revision AS Revision, mode AS Mode, partial AS Partial,
        person AS Person, planned AS Planned, begun_utc AS BegunUtc, retest_of AS RetestOf, ended_utc AS EndedUtc, took_us AS TookUs,
        interrupted AS Interrupted, none AS None, pass AS Pass, inconclusive AS Inconclusive, fail AS Fail, error AS Error,
        conditions AS Conditions
        """;

    public long Id { get; init; }
    public string Run { get; init; } = "";
    public string Plant { get; init; } = "";
    public string Station { get; init; } = "";
    public string StationKind { get; init; } = "";
    public string Vin { get; init; } = "";
    public string OrderId { get; init; } = "";
    public string VehicleType { get; init; } = "";
    public string Sequence { get; init; } = "";
    public int Revision { get; init; }
    public string Mode { get; init; } = "";
    public bool Partial { get; init; }
    public string? Person { get; init; }
    public int Planned { get; init; }
    public string BegunUtc { get; init; } = "";
    public string? RetestOf { get; init; }
    public string? EndedUtc { get; init; }
    public long TookUs { get; init; }
    public bool Interrupted { get; init; }
    public int None { get; init; }
    public int Pass { get; init; }
    public int Inconclusive { get; init; }
    public int Fail { get; init; }
    public int Error { get; init; }
    public string? Conditions { get; init; }

    public RunSummary ToSummary() => new()
    {
        Run = Run,
        Plant = Plant,
        Station = Station,
        StationKind = StationKind,
        Vin = Vin,
        Order = OrderId,
        VehicleType = VehicleType,
        Sequence = Sequence,
        Revision = Revision,
        Mode = RunBegunForm.ModeOf(Mode),
        IsPartial = Partial,
        RetestOf = RetestOf,
        Person = Person,
        Planned = Planned,
        Begun = UtcText.Read(BegunUtc),
        Conditions = Conditions is null ? [] : ConditionsForm.ListOf(Conditions),
        End = EndedUtc is null
            ? null
            : new RunEnd(UtcText.Read(EndedUtc), TimeSpan.FromMicroseconds(TookUs), Interrupted, new RollUp(None, Pass, Inconclusive, Fail, Error)),
    };
}
