using EolSequencer.Language.Binding.Stations;
using EolSequencer.Language.Diagnostics;
using EolSequencer.Model.Plants;
using EolSequencer.Model.Sequences;

namespace EolSequencer.Language.Loading;

/// <summary>Whether a station can run a sequence, as far as its file says.</summary>
public static class StationFit
{
    /// <summary>What is missing; empty when the station can.</summary>
    public static IReadOnlyList<Diagnostic> Check(StationFile station, CheckedSequence sequence)
    {
        var report = new Report();
        if (station.StationKind != sequence.StationKind)
        {
            report.Add(StationCodes.OtherKind, station.Place, $"'{sequence.Id}' is for station kind '{sequence.StationKind}', '{station.Id}' is a '{station.StationKind}'");
        }

        foreach (var role in sequence.Roles)
        {
            if (station.Find(role.Role) is null) report.Add(StationCodes.RoleUnbound, station.Place, $"'{sequence.Id}' needs a device '{role.Role}' of kind '{role.Kind.Id}'");
        }

        return report.InOrder;
    }
}
