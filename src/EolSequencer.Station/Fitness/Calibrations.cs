using System.Collections.Immutable;
using System.Globalization;
using EolSequencer.Model.Events;
using EolSequencer.Model.Plants;
using EolSequencer.Model.Sequences;

namespace EolSequencer.Station.Fitness;

/// <summary>Whether the instruments of a station are calibrated: the last day counts in the plant's zone, to its end.</summary>
public static class Calibrations
{
    /// <summary>What speaks against a run, one line for each instrument that the sequence uses; empty when nothing does.</summary>
    public static ImmutableArray<string> Overdue(StationFile station, CheckedSequence sequence, Plant plant, DateTimeOffset now) =>
        Overdue(sequence.Roles.Select(role => station.Find(role.Role)).OfType<RoleBinding>(), plant, now);

    /// <summary>What speaks against the station as a whole, one line for each of its instruments.</summary>
    public static ImmutableArray<string> Overdue(StationFile station, Plant plant, DateTimeOffset now) => Overdue(station.Devices, plant, now);

    private static ImmutableArray<string> Overdue(IEnumerable<RoleBinding> roles, Plant plant, DateTimeOffset now) =>
    [
        .. roles.Select(role => (role.Role, role.Instrument))
            .Where(used => used.Instrument is not null)
            .Select(used => new InstrumentInUse(used.Role, used.Instrument!.Id, used.Instrument.CalibrationDue))
            .Where(used => IsOverdue(used, now, plant.Zone))
            .Select(Describe),
    ];

    /// <summary>The instruments of a recorded run that were overdue when it began.</summary>
    public static ImmutableArray<string> OverdueIn(RunBegun begun) =>
        [.. begun.Instruments.Where(used => IsOverdue(used, begun.Wall, begun.Zone)).Select(Describe)];

    private static bool IsOverdue(InstrumentInUse used, DateTimeOffset now, string zone)
    {
        var today = DateOnly.FromDateTime(TimeZoneInfo.ConvertTime(now, TimeZoneInfo.FindSystemTimeZoneById(zone)).DateTime);
        return used.CalibrationDue is not { } due || today > due;
    }

    private static string Describe(InstrumentInUse used) => used.CalibrationDue is { } due
        ? $"the calibration of {used.Instrument} ({used.Role}) was due on {due.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture)}"
        : $"the station's file does not say until when {used.Instrument} ({used.Role}) is calibrated";
}
