using EolSequencer.Wire.Uds;

namespace EolSequencer.Simulators.ControlUnits.Services;

/// <summary>
/// Finds the service of a request and makes the checks that come before it, in the order of ISO 14229-1: is the
/// service there, is it there in this session; length, sub-function and the rest are the service's own.
/// </summary>
internal static class ServiceDesk
{
    public static Reply Serve(ControlUnit unit, ReadOnlyMemory<byte> request)
    {
        var service = request.Span[0];
        if (!Knows(unit, service)) return NegativeCode.ServiceNotSupported;
        if (service < (byte)ServiceId.DiagnosticSessionControl) return unit.Type.Obd!.Serve(unit, request.Span);
        if (!IsServed(unit, service)) return NegativeCode.ServiceNotSupportedInActiveSession;
        return (ServiceId)service switch
        {
            ServiceId.DiagnosticSessionControl => UnitServices.ChangeSession(unit, request.Span),
            ServiceId.EcuReset => UnitServices.Reset(unit, request.Span),
            ServiceId.TesterPresent => UnitServices.ShowPresence(request.Span),
            ServiceId.CommunicationControl => UnitServices.ControlCommunication(unit, request.Span),
            ServiceId.SecurityAccess => UnitServices.Unlock(unit, request),
            ServiceId.ClearDiagnosticInformation => TroubleServices.Clear(unit, request.Span),
            ServiceId.ReadDtcInformation => TroubleServices.Read(unit, request.Span),
            ServiceId.ControlDtcSetting => TroubleServices.ControlStoring(unit, request),
            ServiceId.ReadDataByIdentifier => DataServices.Read(unit, request.Span),
            ServiceId.WriteDataByIdentifier => DataServices.Write(unit, request),
            ServiceId.InputOutputControlByIdentifier => DataServices.Control(unit, request),
            _ => RoutineServices.Control(unit, request),
        };
    }

    /// <summary>Whether the unit has a service at all.</summary>
    public static bool Knows(ControlUnit unit, byte service) =>
        service < (byte)ServiceId.DiagnosticSessionControl ? unit.Type.Obd is not null : IsKnown((ServiceId)service);

    /// <summary>Whether the session lets a service be served; otherwise it is refused without any work.</summary>
    public static bool IsServed(ControlUnit unit, byte service) => !unit.Session.IsDefault || !NeedsSession((ServiceId)service);

    private static bool IsKnown(ServiceId service) => service is
        ServiceId.DiagnosticSessionControl or ServiceId.EcuReset or ServiceId.ClearDiagnosticInformation or
        ServiceId.ReadDtcInformation or ServiceId.ReadDataByIdentifier or ServiceId.SecurityAccess or
        ServiceId.CommunicationControl or ServiceId.WriteDataByIdentifier or ServiceId.InputOutputControlByIdentifier or
        ServiceId.RoutineControl or ServiceId.TesterPresent or ServiceId.ControlDtcSetting;

    private static bool NeedsSession(ServiceId service) => service is
        ServiceId.SecurityAccess or ServiceId.CommunicationControl or ServiceId.WriteDataByIdentifier or
        ServiceId.InputOutputControlByIdentifier or ServiceId.RoutineControl or ServiceId.ControlDtcSetting;
}
