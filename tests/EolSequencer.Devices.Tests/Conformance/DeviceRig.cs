using EolSequencer.Model.Devices;
using EolSequencer.Model.Ports;
using EolSequencer.Model.Values;
using EolSequencer.Simulators.Time;

namespace EolSequencer.Devices.Tests.Conformance;

/// <summary>A device of some adapter with a counterpart that is well, and what the suite may ask of it.</summary>
public sealed record DeviceRig
{
    public required VirtualTime Time { get; init; }

    public required IDevice Device { get; init; }

    /// <summary>Channels without index that are polled, each with the value it gives.</summary>
    public required IReadOnlyList<(ChannelDescription Channel, string Value)> Steady { get; init; }

    /// <summary>A channel with an index, and the value of each.</summary>
    public required ChannelDescription Indexed { get; init; }

    public required IReadOnlyList<(string Index, string Value)> ByIndex { get; init; }

    /// <summary>A channel that somebody is to answer who does not, while others on the link do.</summary>
    public required ChannelDescription Silent { get; init; }

    /// <summary>An action that is confirmed, and what it is set to.</summary>
    public required (ActionDescription Action, Value To) Action { get; init; }

    /// <summary>Breaks the link to the counterpart; true: mends it.</summary>
    public required Action<bool> SetLink { get; init; }

    /// <summary>How long the adapter may take to use a link that is back.</summary>
    public TimeSpan LinkReturns { get; init; }

    public ReadRequest Request(ChannelDescription channel, string? index = null) => new(channel, index, Time.GetTimestamp());
}
