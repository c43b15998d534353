using EolSequencer.Wire.Can;
using EolSequencer.Wire.IsoTp;

namespace EolSequencer.Devices.Transport;

/// <summary>What all connections of a tester on one bus have in common.</summary>
internal sealed record TransportLink(ICanPort Port, TimeProvider Time)
{
    public TransportOptions Options { get; init; } = new();

    public TransportTimers Timers { get; init; } = new();
}
