using System.Collections.Immutable;
using System.Globalization;
using EolSequencer.Language.Binding.Vehicles;
using EolSequencer.Language.Diagnostics;
using EolSequencer.Model.Sequences;
using EolSequencer.Model.Source;
using EolSequencer.Model.Vehicles;

namespace EolSequencer.Language.Binding.Reach;

/// <summary>What can only be found when all expressions work: who reaches what, for every vehicle that can be ordered.</summary>
internal static class ReachChecks
{
    /// <summary>The sequence unrolled for every possible vehicle; null when that is not possible, which has then been reported.</summary>
    /// <param name="sequence">A sequence whose expressions are compiled.</param>
    /// <param name="typePlace">Where the sequence names its vehicle type.</param>
    public static NodeInstances? Run(
        CheckedSequence sequence, SourcePlace typePlace, ImmutableDictionary<string, LimitDefinition> limits, PlaceBook places, Report report)
    {
        if (Vehicles(sequence.VehicleType, limits, FactNames.Of(sequence), typePlace, report) is not { } vehicles) return null;
        VehicleChecks.Run(sequence.VehicleType, vehicles, report);
        if (NodeInstances.Of(sequence, vehicles) is not { } instances)
        {
            report.Add(SequenceCodes.TooManySteps, typePlace, $"the loops of '{sequence.Id}' make more than {NodeInstances.Most.ToString(CultureInfo.InvariantCulture)} steps and groups");
            return null;
        }

        SharedCaptures.Check(sequence, report);
        var coverage = new LimitCoverage(vehicles, places, report);
        var devices = new DevicePresence(sequence.Roles, vehicles, places, report);
        var results = new ResultPresence(instances.All, vehicles, report);
        var traces = new TracePresence(instances.All, vehicles, report);
        var exactness = new Exactness(sequence.Roles, places, report);
        foreach (var instance in instances.All)
        {
            exactness.Check(instance);
            coverage.Check(instance);
            devices.Check(instance);
            results.Check(instance);
            traces.Check(instance);
        }

        return instances;
    }

    /// <summary>The vehicles of a type that can be ordered; null when there are none, which has then been reported.</summary>
    public static PossibleVehicles? Vehicles(
        VehicleType type, ImmutableDictionary<string, LimitDefinition> limits, IEnumerable<string> facts, SourcePlace place, Report report)
    {
        var vehicles = PossibleVehicles.Of(type, facts.Concat(FactNames.Of(type, limits)).ToHashSet(StringComparer.Ordinal));
        if (vehicles.Count == 0)
        {
            report.Add(VehicleCodes.NobodyBuilt, place, $"every combination of options of '{type.Id}' is impossible");
            return null;
        }

        if (vehicles.IsSample)
        {
            report.Add(VehicleCodes.Sampled, place, string.Create(CultureInfo.InvariantCulture,
                $"'{type.Id}' has more than {PossibleVehicles.Most} combinations of options; {vehicles.Count} are tried: {vehicles.Planned} that show every two values together, and drawn ones"));
        }

        return vehicles;
    }
}
