using EolSequencer.Model.Events;
using EolSequencer.Model.Ports;
using EolSequencer.Model.Vehicles;
using EolSequencer.Records.Correcting;
using EolSequencer.Records.Sqlite;

namespace EolSequencer.Records.Parts;

/// <summary>Knows the parts of a record: what the newest run that counts found in a place is there.</summary>
internal sealed class RecordedSerials(RecordFiles files, RecordOptions options) : IPartSerials
{
    public SerialAnswer Elsewhere(Vin vin, PartName part, string serial)
    {
        try
        {
            return files.Read(options, connection =>
            {
                connection.HoldMoment();
                return Elsewhere(connection, new VinTrail(new SqliteTables(connection).Corrections), vin.Text, part, serial) is { } other
                    ? new SerialAnswer.There(other.Vin, new PartName(other.Part, other.At), other.Run)
                    : (SerialAnswer)new SerialAnswer.Nowhere();
            });
        }
        catch (RecordFault fault)
        {
            return new SerialAnswer.Unknown(fault.Message);
        }
    }

    /// <summary>Where else a part is by now; null: nowhere.</summary>
    public static PartSerial? Elsewhere(RecordConnection connection, VinTrail trail, string vin, PartName part, string serial)
    {
        var current = trail.Current(vin);
        return Now(connection, trail, part.Kind, serial).FirstOrDefault(there => there.Vin != current || there.At != part.At);
    }

    /// <summary>Where parts with this serial are by now.</summary>
    public static IEnumerable<PartSerial> Now(RecordConnection connection, VinTrail trail, string part, string serial) =>
        PartSerials.With(connection, part, serial).Select(found => trail.Current(found.Vin)).Distinct()
            .SelectMany(vehicle => PartSerials.Marked(PartSerials.Of(connection, trail.All(vehicle), RunMode.Production)))
            .Where(one => one is { Replaced: false } && one.Part == part && one.Serial == serial);

    /// <summary>The parts of a vehicle that are elsewhere too, each with where.</summary>
    /// <param name="vins">All numbers of the vehicle.</param>
    public static IEnumerable<(PartSerial Here, PartSerial There)> Shared(RecordConnection connection, VinTrail trail, IReadOnlyList<string> vins)
    {
        if (!vins.Any(vin => MayShare(connection, vin))) yield break;
        foreach (var here in PartSerials.Marked(PartSerials.Of(connection, vins, RunMode.Production)).Where(part => !part.Replaced))
        {
            if (Elsewhere(connection, trail, here.Vin, new PartName(here.Part, here.At), here.Serial) is { } there) yield return (here, there);
        }
    }

    private static bool MayShare(RecordConnection connection, string vin)
    {
        using var shared = new Statement(
            connection.Connection.Handle!,
            """
            SELECT 1 FROM part_serial AS here JOIN part_serial AS there ON there.serial = here.serial AND there.part = here.part AND there.mode = 'production'
            WHERE here.vin = ? AND here.mode = 'production' AND (there.vin <> here.vin OR there.at <> here.at) LIMIT 1
            """);
        return shared.Text(1, vin).Next();
    }
}
