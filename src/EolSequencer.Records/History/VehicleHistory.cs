using EolSequencer.Model.Events;
using EolSequencer.Model.Vehicles;
using EolSequencer.Records.Correcting;
using EolSequencer.Records.Parts;
using EolSequencer.Records.Sqlite;

namespace EolSequencer.Records.History;

/// <summary>What vehicles have come to, read from their runs. From any thread; every call is short.</summary>
/// <remarks>Trouble with the record itself is a <see cref="RecordFault"/>.</remarks>
public sealed class VehicleHistory
{
    private readonly RecordFiles _files;
    private readonly RecordOptions _options;

    internal VehicleHistory(RecordFiles files, RecordOptions options) => (_files, _options) = (files, options);

    /// <summary>A vehicle at every station kind; none when it was never tested.</summary>
    /// <param name="vin">Identification number, exactly; one that was corrected gives the vehicle that it was corrected to.</param>
    /// <param name="mode">Runs that count, or others; never both.</param>
    public VehicleState Of(string vin, RunMode mode = RunMode.Production) => Read(connection =>
    {
        var tables = new SqliteTables(connection);
        var trail = new VinTrail(tables.Corrections);
        var isCounting = mode == RunMode.Production;
        var vins = isCounting ? trail.All(vin) : [vin];
        return new VehicleState(
            vins[0], [.. new VehicleRuns(connection, tables, vins, mode).InFull()], PartSerials.Marked(PartSerials.Of(connection, vins, mode)), isCounting ? [.. trail.Corrections(vin)] : []);
    });

    /// <summary>How a vehicle stands that is about to be run so that it counts.</summary>
    public VehicleArrival Arrival(Order order) => Read(connection => VehicleArrival.Of(new SqliteTables(connection), order));

    private T Read<T>(Func<RecordConnection, T> read) => _files.Read(_options, connection =>
    {
        connection.HoldMoment();
        return read(connection);
    });
}
