using System.Collections.Immutable;
using EolSequencer.Devices.Adapters;
using EolSequencer.Simulators.Faults;
using EolSequencer.Station.Identifying;

namespace EolSequencer.Cli.Probing;

/// <summary>What is probed, loaded and fitting together.</summary>
/// <param name="Adapters">What a station without a simulated vehicle may name.</param>
/// <param name="IsReal">Real time, or virtual time that stands still while nothing is asked.</param>
internal sealed record ProbeChoices(IdentifiedVehicle Vehicle, ImmutableArray<InjectedFault> Faults, ulong Seed, bool IsReal, AdapterRegistry Adapters)
{
    /// <summary>How long a line of C# may run.</summary>
    public TimeSpan LineLimit { get; init; } = TimeSpan.FromSeconds(10);
}
