using EolSequencer.Engine.Planning;
using EolSequencer.Model.Sequences;
using EolSequencer.Model.Texts;
using EolSequencer.Model.Vehicles;
using EolSequencer.Simulators;
using EolSequencer.Simulators.Faults;

namespace EolSequencer.Rehearsal.Simulated;

/// <summary>Whether a fault can show at all: one that cannot would pass for a fault that every step has missed.</summary>
public static class FaultFit
{
    /// <returns>Why nothing in a run of this sequence on this vehicle can show it, and what to try; null when something can.</returns>
    public static string? WhyUnseen(InjectedFault fault, CheckedSequence sequence, Order order)
    {
        if (!FaultCatalogue.CanHave(VehicleFacts.Of(order).Options, fault)) return $"the vehicle of order {order.Id} has no such part – name an order whose vehicle has it";
        if (!HasDevice(sequence, fault.Point)) return $"'{sequence.Id}' uses no {fault.Point.Device}, so no channel of it shows that – leave it out, or read such a device in a step";
        return fault.Point.TakesAnyPlace ? WhyNoStep(fault, Planner.For(sequence, order)) : null;
    }

    /// <summary>False for a fault of an instrument that the sequence does not use.</summary>
    public static bool HasDevice(CheckedSequence sequence, FaultPoint point) =>
        point.Device is not { } device || sequence.Roles.Any(role => role.Kind.Id == device);

    private static string? WhyNoStep(InjectedFault fault, Plan plan)
    {
        var steps = Plan.StepsOf(plan.Prepare, plan.Steps, plan.Always, plan.AfterVerdict);
        var named = steps.Where(step => step.Id == fault.Place || step.Pattern == fault.Place).ToList();
        if (named.Exists(step => fault.Point.Concerns(step.Step))) return null;
        if (named.Count > 0) return $"at step '{fault.Place}' there is nothing for a person that could go wrong like this{Nearest()}";
        return $"this vehicle has no step '{fault.Place}'{Nearest()}";

        string Nearest()
        {
            var nearest = steps.Where(step => fault.Point.Concerns(step.Step)).Select(step => step.Id)
                .OrderBy(id => EditDistance.Between(fault.Place!, id)).ThenBy(id => id, StringComparer.Ordinal).Take(3).ToList();
            return nearest.Count == 0 ? "" : $" – nearest that it can be put into: {string.Join(", ", nearest)}";
        }
    }
}
