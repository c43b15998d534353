using EolSequencer.Wire.Uds;

namespace EolSequencer.Simulators.ControlUnits.Services;

/// <summary>Services 10, 11, 27, 28 and 3E: the unit as a whole.</summary>
internal static class UnitServices
{
    private const byte WriteLevel = 3;

    public static Reply ChangeSession(ControlUnit unit, ReadOnlySpan<byte> message)
    {
        if (!DiagnosticSessionControl.TryReadRequest(message, out var request)) return NegativeCode.IncorrectMessageLengthOrInvalidFormat;
        if (request.Session is not (DiagnosticSession.Default or DiagnosticSession.Extended)) return NegativeCode.SubFunctionNotSupported;
        if (unit.Quirks.RefusesSession && request.Session != DiagnosticSession.Default) return NegativeCode.ConditionsNotCorrect;
        unit.EnterSession(request.Session);
        return DiagnosticSessionControl.MakeResponse(request.Session, SessionTiming.Standard);
    }

    public static Reply Reset(ControlUnit unit, ReadOnlySpan<byte> message)
    {
        if (!EcuReset.TryReadRequest(message, out var request)) return NegativeCode.IncorrectMessageLengthOrInvalidFormat;
        if (request.Kind is not (ResetKind.Hard or ResetKind.KeyOffOn or ResetKind.Soft)) return NegativeCode.SubFunctionNotSupported;
        return unit.Quirks.RefusesReset ? NegativeCode.ConditionsNotCorrect : Reply.BeforeRestart(EcuReset.MakeResponse(request.Kind));
    }

    public static Reply ShowPresence(ReadOnlySpan<byte> message)
    {
        if (!TesterPresent.TryReadRequest(message, out var subFunction)) return NegativeCode.IncorrectMessageLengthOrInvalidFormat;
        return subFunction == 0 ? TesterPresent.MakeResponse() : NegativeCode.SubFunctionNotSupported;
    }

    public static Reply ControlCommunication(ControlUnit unit, ReadOnlySpan<byte> message)
    {
        if (!CommunicationControl.TryReadRequest(message, out var request)) return NegativeCode.IncorrectMessageLengthOrInvalidFormat;
        if (request.Control > CommunicationControl.Control.DisableBoth) return NegativeCode.SubFunctionNotSupported;
        if ((request.Messages & CommunicationControl.Messages.Normal) == 0) return NegativeCode.RequestOutOfRange;
        unit.Mute(request.Control is CommunicationControl.Control.EnableReceptionOnly or CommunicationControl.Control.DisableBoth);
        return CommunicationControl.MakeResponse(request.Control);
    }

    public static Reply Unlock(ControlUnit unit, ReadOnlyMemory<byte> message)
    {
        if (message.Length < 2) return NegativeCode.IncorrectMessageLengthOrInvalidFormat;
        if ((message.Span[1] & 0x7F) is not (WriteLevel or WriteLevel + 1)) return NegativeCode.SubFunctionNotSupported;
        if (!SecurityAccess.TryReadRequest(message, out var request)) return NegativeCode.IncorrectMessageLengthOrInvalidFormat;
        return request.IsKey
            ? unit.Session.TakeKey(request.Level, request.Data.Span, unit.Now)
            : unit.Session.MakeSeed(request.Level, unit.Now);
    }
}
