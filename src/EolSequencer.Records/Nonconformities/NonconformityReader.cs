using System.Collections.Immutable;
using EolSequencer.Records.Administration;
using EolSequencer.Records.Correcting;

namespace EolSequencer.Records.Nonconformities;

/// <summary>The nonconformities of a record. From any thread.</summary>
public sealed class NonconformityReader
{
    private readonly IActReader _record;

    internal NonconformityReader(IActReader record) => _record = record;

    /// <summary>Nonconformities by number.</summary>
    /// <param name="vin">Only of this vehicle, under all its numbers; null: of all.</param>
    /// <param name="all">True: closed and conceded ones too.</param>
    public ImmutableArray<Nonconformity> List(string? vin = null, bool all = false) => _record.Read(view =>
    {
        IEnumerable<NonconformityRow> rows = vin is null ? view.Nonconformities.All() : view.Nonconformities.OfVehicle(new VinTrail(view.Corrections).All(vin)).OrderBy(row => row.Id, StringComparer.Ordinal);
        return rows.Where(row => all || row.IsOpen).Select(Nonconformity.Of).ToImmutableArray();
    });
}
