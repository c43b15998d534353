using EolSequencer.Wire.TroubleCodes;
using EolSequencer.Wire.Uds;

namespace EolSequencer.Simulators.ControlUnits.Services;

/// <summary>Services 14, 19 and 85: trouble codes.</summary>
internal static class TroubleServices
{
    public static Reply Clear(ControlUnit unit, ReadOnlySpan<byte> message)
    {
        if (!ClearDiagnosticInformation.TryReadRequest(message, out var group)) return NegativeCode.IncorrectMessageLengthOrInvalidFormat;
        if (group != ClearDiagnosticInformation.AllGroups) return NegativeCode.RequestOutOfRange;
        if (unit.Quirks.ClearFails) return NegativeCode.ConditionsNotCorrect;
        unit.Memory.Troubles.Clear();
        return ClearDiagnosticInformation.MakeResponse();
    }

    public static Reply Read(ControlUnit unit, ReadOnlySpan<byte> message)
    {
        if (!ReadDtcInformation.TryReadRequest(message, out var request, out var refusal)) return refusal;
        var troubles = unit.Memory.Troubles;
        switch (request.Report)
        {
            case ReadDtcInformation.Report.NumberByStatusMask:
                var number = new ReadDtcInformation.Number(TroubleMemory.Availability, TroubleCodeFormat.J2012Format00, troubles.With(request.Mask).Count);
                return ReadDtcInformation.MakeNumberResponse(number);
            case ReadDtcInformation.Report.CodesByStatusMask:
                return ReadDtcInformation.MakeListResponse(request.Report, TroubleMemory.Availability, troubles.With(request.Mask));
            case ReadDtcInformation.Report.SupportedCodes:
                return ReadDtcInformation.MakeListResponse(request.Report, TroubleMemory.Availability, troubles.Codes);
            default:
                return Detail(troubles, request);
        }
    }

    public static Reply ControlStoring(ControlUnit unit, ReadOnlyMemory<byte> message)
    {
        if (!ControlDtcSetting.TryReadRequest(message, out var request)) return NegativeCode.IncorrectMessageLengthOrInvalidFormat;
        if (request.Setting is not (ControlDtcSetting.Setting.On or ControlDtcSetting.Setting.Off)) return NegativeCode.SubFunctionNotSupported;
        if (!request.Record.IsEmpty) return NegativeCode.RequestOutOfRange;
        unit.Memory.Troubles.IsStoring = request.Setting == ControlDtcSetting.Setting.On;
        return ControlDtcSetting.MakeResponse(request.Setting);
    }

    // No snapshots are kept: a known code is answered without records.
    private static Reply Detail(TroubleMemory troubles, ReadDtcInformation.Request request)
    {
        foreach (var entry in troubles.Codes)
        {
            if (entry.Code == request.Code) return ReadDtcInformation.MakeDetailResponse(request.Report, entry, []);
        }

        return NegativeCode.RequestOutOfRange;
    }
}
