using EolSequencer.Model.Devices;
using EolSequencer.Model.Expressions;

namespace EolSequencer.Engine.Planning;

/// <summary>One value of a channel that is kept as a trace on one vehicle.</summary>
/// <param name="Role">The device role.</param>
/// <param name="Channel">What is kept.</param>
/// <param name="Index">Which value of an indexed channel; null when it has no index.</param>
/// <param name="Every">How often; null: as the author of the device kind says, a broadcast signal at each arrival.</param>
public sealed record PlannedCapture(string Role, ChannelDescription Channel, string? Index, TimeSpan? Every)
{
    /// <summary>As records name it: <c>bus.wheel_speed[fl]</c>.</summary>
    public string Name => ChannelUse.NameOf(Role, Channel.Name, Index);
}
