using System.Collections.Immutable;
using EolSequencer.Model.Ports;
using EolSequencer.Simulators.Faults;
using EolSequencer.Station.Identifying;

namespace EolSequencer.Cli.Commands;

/// <summary>All that was typed behind <c>eol run</c>, loaded and fitting together.</summary>
/// <param name="Only">Ids of the steps and groups wanted; empty: all.</param>
/// <param name="RetestOf">The whole run that is repeated in part; null: none.</param>
internal sealed record ReadyRun(IdentifiedVehicle Vehicle, ImmutableArray<InjectedFault> Faults, OperatorScript? Script, ImmutableArray<string> Only, string? RetestOf);
