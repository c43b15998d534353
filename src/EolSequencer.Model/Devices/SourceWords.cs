using System.Globalization;

namespace EolSequencer.Model.Devices;

/// <summary>In words, how the bus of a vehicle obtains a channel and does an action.</summary>
public static class SourceWords
{
    /// <summary>How a channel is obtained; null for other devices, whose station file says so.</summary>
    /// <param name="index">The index asked for, which may name the control unit; null when it is left open.</param>
    public static string? Of(ChannelDescription channel, string? index = null)
    {
        var open = channel.Indexes.IsEmpty ? EveryUnit : index ?? NamedUnit;
        return channel.Source switch
        {
            ChannelSource.Data data => $"data identifier 0x{data.Identifier:X4} of {data.Ecu ?? open} (ISO 14229-1, service 22)",
            ChannelSource.RoutineResult routine => $"results of routine 0x{routine.Identifier:X4} of {routine.Ecu ?? open} (ISO 14229-1, service 31 03)",
            ChannelSource.Obd obd => $"parameter 0x{obd.Parameter:X2} of service 01 (SAE J1979)",
            ChannelSource.Broadcast frame => $"broadcast in frame 0x{frame.FrameId:X3} every {frame.Cycle.TotalMilliseconds.ToString("0.###", CultureInfo.InvariantCulture)} ms",
            ChannelSource.Service { Kind: ServiceRead.Presence } presence => $"TesterPresent to {presence.Ecu ?? open} (ISO 14229-1, service 3E)",
            ChannelSource.Service codes => $"trouble codes of {codes.Ecu ?? open}, status mask 0x{codes.Mask:X2} (ISO 14229-1, service 19 02)",
            _ => null,
        };
    }

    /// <summary>How an action is done; null for other devices, whose station file says so.</summary>
    /// <param name="index">The index acted on, which may name the control unit; null when it is left open.</param>
    public static string? Of(ActionDescription action, string? index = null)
    {
        var open = action.Indexes.IsEmpty ? EveryUnit : index ?? NamedUnit;
        return action.Source switch
        {
            ActionSource.Control control => $"output control of {control.Ecu ?? open} (ISO 14229-1, service 2F)",
            ActionSource.Write write => $"writes data identifier 0x{write.Identifier:X4} of {write.Ecu ?? open} (ISO 14229-1, service 2E)",
            ActionSource.Routine routine => $"starts routine 0x{routine.Identifier:X4} of {routine.Ecu ?? open} (ISO 14229-1, service 31 01)",
            ActionSource.Service service => $"{Of(service.Kind)} of {service.Ecu ?? open}{Standard(service.Kind)}",
            _ => null,
        };
    }

    private const string EveryUnit = "all units fitted";

    private const string NamedUnit = "the unit that the index names";

    private static string Of(ServiceAct act) => act switch
    {
        ServiceAct.ClearTroubleCodes => "clears the trouble codes",
        ServiceAct.ReturnControl => "gives back every output taken over",
        ServiceAct.ExtendedSession => "extended session",
        ServiceAct.DefaultSession => "default session",
        _ => "hard reset",
    };

    private static string Standard(ServiceAct act) => $" (ISO 14229-1, service {act switch
    {
        ServiceAct.ClearTroubleCodes => "14",
        ServiceAct.ReturnControl => "2F 00",
        ServiceAct.ExtendedSession => "10 03",
        ServiceAct.DefaultSession => "10 01",
        _ => "11 01",
    }})";
}
