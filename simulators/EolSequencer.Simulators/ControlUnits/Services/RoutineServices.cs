using EolSequencer.Wire.Uds;

namespace EolSequencer.Simulators.ControlUnits.Services;

/// <summary>Service 31: routines.</summary>
internal static class RoutineServices
{
    public static Reply Control(ControlUnit unit, ReadOnlyMemory<byte> message)
    {
        if (!RoutineControl.TryReadRequest(message, out var request)) return NegativeCode.IncorrectMessageLengthOrInvalidFormat;
        if (unit.Type.FindRoutine(request.Identifier) is not { } routine) return NegativeCode.RequestOutOfRange;
        if (request.Act is not (RoutineControl.Act.Start or RoutineControl.Act.RequestResults)) return NegativeCode.SubFunctionNotSupported;
        if (!request.Options.IsEmpty) return NegativeCode.IncorrectMessageLengthOrInvalidFormat;
        if (request.Act == RoutineControl.Act.Start)
        {
            routine.Start(unit.Van);
            return RoutineControl.MakeResponse(request.Act, request.Identifier);
        }

        if (!routine.WasStarted(unit.Van)) return NegativeCode.RequestSequenceError;
        return RoutineControl.MakeResponse(request.Act, request.Identifier, [routine.Status(unit.Van, unit.Now)]);
    }
}
