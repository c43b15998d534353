using EolSequencer.Language.Binding.Reach;
using EolSequencer.Language.Binding.Vehicles;
using EolSequencer.Language.Diagnostics;
using EolSequencer.Model.Expressions;

namespace EolSequencer.Language.Binding.Advice;

/// <summary>Rows of limits that no vehicle meets. Of a sample of vehicles nothing is concluded.</summary>
internal static class LimitAdvice
{
    public static void Run(IEnumerable<LimitDefinition> limits, PossibleVehicles vehicles, Report report)
    {
        if (vehicles.IsSample) return;
        foreach (var limit in limits.OfType<LimitDefinition.Rows>())
        {
            foreach (var row in limit.All)
            {
                if (row.When is not { } when || !vehicles.Where(when, Arguments.None).Maybe.IsEmpty) continue;
                report.Add(AdviceCodes.RowNeverApplies, when.Place, $"no vehicle has  {when.Text},  so this row of limits.{limit.Name} judges nothing");
            }
        }
    }
}
