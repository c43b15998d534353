using EolSequencer.Simulators.Bus;
using EolSequencer.Simulators.ControlUnits;
using EolSequencer.Simulators.Instruments;
using EolSequencer.Simulators.Operators;
using EolSequencer.Simulators.Physics;
using EolSequencer.Simulators.Time;

namespace EolSequencer.Simulators.Faults;

/// <summary>All that a fault can reach.</summary>
internal sealed record FaultTarget(
    Van Van, UnitNetwork Network, SimulatedCanBus Bus, BusPort Tester, OperatorHabits Operator, BenchQuirks Bench, ISchedule Schedule);
