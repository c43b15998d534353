using EolSequencer.Simulators.Time;

namespace EolSequencer.Simulators.Faults;

/// <summary>Makes things wrong, at once or at their time.</summary>
internal static class FaultInjection
{
    /// <summary>Injects faults and gives back those that the vehicle cannot have.</summary>
    public static List<InjectedFault> Inject(FaultTarget target, IEnumerable<InjectedFault> faults)
    {
        var unsuitable = new List<InjectedFault>();
        foreach (var fault in faults)
        {
            if (!fault.Point.IsPossible(target.Van.Equipment, fault.Place)) unsuitable.Add(fault);
            else if (fault.At is { } at) target.Schedule.At(target.Schedule.Now + at, new Moment(target, fault));
            else Apply(target, fault);
        }

        return unsuitable;
    }

    private static void Apply(FaultTarget target, InjectedFault fault)
    {
        fault.Point.Apply(target, fault.Place, fault.Number ?? fault.Point.Number ?? 0);
        target.Van.Lamps.Refresh();
        target.Van.Changed();
    }

    private sealed class Moment(FaultTarget target, InjectedFault fault) : IDue
    {
        public void Due(int what) => Apply(target, fault);
    }
}
