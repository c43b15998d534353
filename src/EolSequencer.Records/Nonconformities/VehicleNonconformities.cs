using EolSequencer.Records.Administration;

namespace EolSequencer.Records.Nonconformities;

/// <summary>Finds nonconformities by vehicle.</summary>
internal static class VehicleNonconformities
{
    /// <summary>Those of a vehicle, for one of its numbers after the other.</summary>
    /// <param name="vins">All its numbers.</param>
    public static IEnumerable<NonconformityRow> OfVehicle(this IRows<NonconformityRow> rows, IEnumerable<string> vins) => vins.SelectMany(vin => rows.Where("vin", vin));
}
