using EolSequencer.Language.Diagnostics;
using EolSequencer.Model.Expressions;
using EolSequencer.Model.Sequences;
using EolSequencer.Model.Source;

namespace EolSequencer.Language.Binding.Reach;

/// <summary>Every vehicle that reaches a step finds exactly one row of the limit that judges it.</summary>
internal sealed class LimitCoverage(PossibleVehicles vehicles, PlaceBook places, Report report)
{
    public void Check(NodeInstance instance)
    {
        if (instance.Node is not Step step) return;
        Check(step.Expect, places.ExpectOf(step), instance);
        Check(step.Takes, places.TakesOf(step), instance);
    }

    private void Check(Expectation? expect, SourcePlace place, NodeInstance instance)
    {
        if (expect is Expectation.ByIndex windows)
        {
            foreach (var window in windows.Windows.Values) Check(window, place, instance);
        }

        if (expect is Expectation.ByVehicle rows) Check(rows, place, instance.Reached.Maybe);
    }

    private void Check(Expectation.ByVehicle limit, SourcePlace place, VehicleSet reached)
    {
        var met = VehicleSet.None(vehicles.Count);
        foreach (var row in limit.Rows)
        {
            var holds = vehicles.Where(row.When, Arguments.None);
            if (holds.Maybe.Without(holds.Surely).And(reached).First is not null)
            {
                report.Add(LimitCodes.RowUndecided, row.When!.Place, $"whether this row of limits.{limit.Name} applies depends on more than the options");
                return;
            }

            if (met.And(holds.Surely).And(reached).First is { } twice)
            {
                report.Add(LimitCodes.RowsOverlap, place, $"more than one row of limits.{limit.Name} applies to a vehicle with {vehicles.Describe(twice)}");
                return;
            }

            met = met.Or(holds.Surely);
        }

        if (reached.Without(met).First is { } missed)
        {
            report.Add(LimitCodes.NoRow, place, $"limits.{limit.Name} has no row for a vehicle with {vehicles.Describe(missed)}, which reaches this step");
        }
    }
}
