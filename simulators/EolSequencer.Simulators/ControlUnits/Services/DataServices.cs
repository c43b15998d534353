using EolSequencer.Simulators.ControlUnits.Records;
using EolSequencer.Wire.Uds;

namespace EolSequencer.Simulators.ControlUnits.Services;

/// <summary>Services 22, 2E and 2F: records and outputs by identifier.</summary>
internal static class DataServices
{

    public static Reply Read(ControlUnit unit, ReadOnlySpan<byte> message)
    {
        if (!ReadDataByIdentifier.TryReadRequest(message, out var count)) return NegativeCode.IncorrectMessageLengthOrInvalidFormat;
        if (unit.Quirks.ReadRefusal != NegativeCode.None) return unit.Quirks.ReadRefusal;
        byte[]? response = null;
        Span<byte> bytes = stackalloc byte[32];
        for (var i = 0; i < count; i++)
        {
            var identifier = ReadDataByIdentifier.IdentifierAt(message, i);
            if (unit.Type.Find(identifier) is not { } record) continue;
            var present = bytes[..record.Length];
            record.Read(unit, unit.Now, present);
            present = present[..Math.Max(0, present.Length - unit.Quirks.MissingBytes)];
            response = response is null
                ? ReadDataByIdentifier.MakeResponse(identifier, present)
                : ReadDataByIdentifier.Append(response, identifier, present);
        }

        // Of several identifiers, the known ones are answered; without any the request is out of range.
        return response is null ? NegativeCode.RequestOutOfRange : response;
    }

    public static Reply Write(ControlUnit unit, ReadOnlyMemory<byte> message)
    {
        if (!WriteDataByIdentifier.TryReadRequest(message, out var request)) return NegativeCode.IncorrectMessageLengthOrInvalidFormat;
        if (unit.Type.Find(request.Identifier) is not { Write: { } write } record) return NegativeCode.RequestOutOfRange;
        if (request.Record.Length != record.Length) return NegativeCode.IncorrectMessageLengthOrInvalidFormat;
        if (record.WriteLevel != 0 && unit.Session.OpenLevel != record.WriteLevel) return NegativeCode.SecurityAccessDenied;
        if (unit.Quirks.WritesFail) return NegativeCode.GeneralProgrammingFailure;
        var refusal = write(unit, request.Record.Span);
        return refusal == NegativeCode.None ? WriteDataByIdentifier.MakeResponse(request.Identifier) : refusal;
    }

    public static Reply Control(ControlUnit unit, ReadOnlyMemory<byte> message)
    {
        if (!InputOutputControl.TryReadRequest(message, out var request)) return NegativeCode.IncorrectMessageLengthOrInvalidFormat;
        if (unit.Type.Find(request.Identifier) is not { Take: { } take } record) return NegativeCode.RequestOutOfRange;
        switch (request.Parameter)
        {
            case ControlParameter.ShortTermAdjustment:
                if (request.State.Length != 1) return NegativeCode.IncorrectMessageLengthOrInvalidFormat;
                if (request.State.Span[0] > record.HighestState) return NegativeCode.RequestOutOfRange;
                if (unit.Quirks.RefusesOutputs) return NegativeCode.ConditionsNotCorrect;
                take(unit.Van, request.State.Span[0]);
                break;
            case ControlParameter.ReturnControl or ControlParameter.ResetToDefault:
                if (!request.State.IsEmpty) return NegativeCode.IncorrectMessageLengthOrInvalidFormat;
                if (unit.Quirks.KeepsOutputs) return NegativeCode.ConditionsNotCorrect;
                take(unit.Van, null);
                break;
            default:
                return NegativeCode.RequestOutOfRange;
        }

        Span<byte> state = stackalloc byte[1];
        record.Read(unit, unit.Now, state);
        return InputOutputControl.MakeResponse(request.Identifier, request.Parameter, state);
    }
}
