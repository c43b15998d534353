using EolSequencer.Model.Events;
using EolSequencer.Model.Ports;
using EolSequencer.Model.Vehicles;
using EolSequencer.Records.Sqlite;

namespace EolSequencer.Records.Parts;

/// <summary>Knows the parts of a record: what the newest run that counts found in a place is there.</summary>
internal sealed class RecordedSerials(RecordFiles files, RecordOptions options) : IPartSerials
{
    public SerialAnswer Elsewhere(Vin vin, PartName part, string serial)
    {
        try
        {
            return RecordFault.Guard(files, () =>
            {
                using var connection = RecordConnection.ForReading(files.Database, options);
                connection.HoldMoment();
                return Elsewhere(connection, vin.Text, part, serial) is { } other ? new SerialAnswer.There(other.Vin, new PartName(other.Part, other.At), other.Run) : (SerialAnswer)new SerialAnswer.Nowhere();
            });
        }
        catch (RecordFault fault)
        {
            return new SerialAnswer.Unknown(fault.Message);
        }
    }

    /// <summary>Where else a part is by now; null: nowhere.</summary>
    public static PartSerial? Elsewhere(RecordConnection connection, string vin, PartName part, string serial)
    {
        var current = SqliteTables.TrailOf(connection).Current(vin);
        return Now(connection, part.Kind, serial).FirstOrDefault(there => there.Vin != current || there.At != part.At);
    }

    /// <summary>Where parts with this serial are by now.</summary>
    public static IEnumerable<PartSerial> Now(RecordConnection connection, string part, string serial)
    {
        var trail = SqliteTables.TrailOf(connection);
        return PartSerials.With(connection, part, serial).Select(found => trail.Current(found.Vin)).Distinct()
            .SelectMany(vehicle => PartSerials.Marked(PartSerials.Of(connection, trail.All(vehicle), RunMode.Production)))
            .Where(one => one is { Replaced: false } && one.Part == part && one.Serial == serial);
    }
}
