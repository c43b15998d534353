using EolSequencer.Language.Binding.Stations;
using EolSequencer.Language.Diagnostics;
using EolSequencer.Model.Plants;
using EolSequencer.Model.Sequences;
using EolSequencer.Model.Source;

namespace EolSequencer.Language.Loading;

/// <summary>Whether a station can run a sequence, as far as its file says.</summary>
public static class StationFit
{
    /// <summary>What is missing; empty when the station can.</summary>
    /// <param name="place">Where the two were brought together; null: the station's file is what is looked at.</param>
    public static IReadOnlyList<Diagnostic> Check(StationFile station, CheckedSequence sequence, SourcePlace? place = null)
    {
        var report = new Report();
        var at = place ?? station.Place;
        if (station.StationKind != sequence.StationKind)
        {
            report.Add(StationCodes.OtherKind, at, $"'{sequence.Id}' is for station kind '{sequence.StationKind}', '{station.Id}' is a '{station.StationKind}'");
        }

        foreach (var role in sequence.Roles)
        {
            if (station.Find(role.Role) is null) report.Add(StationCodes.RoleUnbound, at, $"'{sequence.Id}' needs a device '{role.Role}' of kind '{role.Kind.Id}'");
        }

        return report.InOrder;
    }
}
