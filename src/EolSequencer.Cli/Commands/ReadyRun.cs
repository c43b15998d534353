using System.Collections.Immutable;
using EolSequencer.Model.Ports;
using EolSequencer.Simulators.Faults;
using EolSequencer.Station.Identifying;

namespace EolSequencer.Cli.Commands;

/// <summary>All that was typed behind <c>eol run</c>, loaded and fitting together.</summary>
internal sealed record ReadyRun(IdentifiedVehicle Vehicle, ImmutableArray<InjectedFault> Faults, OperatorScript? Script);
