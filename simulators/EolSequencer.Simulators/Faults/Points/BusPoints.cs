using EolSequencer.Model.Judging;
using EolSequencer.Simulators.Time;
using EolSequencer.Wire.Can;
using static EolSequencer.Simulators.Faults.FaultPoint;

namespace EolSequencer.Simulators.Faults.Points;

/// <summary>The bus and the tester's link to it. With a number, in seconds, they come back.</summary>
internal static class BusPoints
{
    public static IEnumerable<FaultPoint> All =>
    [
        Lasting("bus_silent", FaultKind.SilentUnit, StepClass.Function, "the bus is dead: nothing arrives, nothing is acknowledged",
            (target, span) => For(target, span, isFaulty => Break(target, isFaulty))),
        Lasting("link_down", FaultKind.SilentUnit, StepClass.Function, "the tester's adapter is gone",
            (target, span) => For(target, span, isFaulty => target.Tester.Change(isFaulty ? LinkState.Down : LinkState.Up))),
        Lasting("bus_off", FaultKind.Short, StepClass.Function, "the tester's controller has gone bus-off",
            (target, span) => For(target, span, isFaulty => target.Tester.Change(isFaulty ? LinkState.BusOff : LinkState.Up))),
    ];

    private static void Break(FaultTarget target, bool isFaulty)
    {
        target.Bus.SetIntact(!isFaulty);
        if (!isFaulty) return;
        foreach (var unit in target.Network.Units) unit.Forget();
    }

    private static void For(FaultTarget target, TimeSpan? span, Action<bool> change)
    {
        change(true);
        if (span is { } length) target.Schedule.At(target.Schedule.Now + length, new End(change));
    }

    private sealed class End(Action<bool> change) : IDue
    {
        public void Due(int what) => change(false);
    }
}
