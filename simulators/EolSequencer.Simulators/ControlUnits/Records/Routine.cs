using EolSequencer.Simulators.Physics;

namespace EolSequencer.Simulators.ControlUnits.Records;

/// <summary>A routine that a unit can run (ISO 14229-1, service 31).</summary>
/// <param name="Identifier">The routine.</param>
/// <param name="Start">Begins it.</param>
/// <param name="WasStarted">Whether there is a result to ask for.</param>
/// <param name="Status">The one status byte of its result.</param>
internal sealed record Routine(ushort Identifier, Action<Van> Start, Func<Van, bool> WasStarted, Func<Van, TimeSpan, byte> Status);
