using EolSequencer.Wire.Obd;
using EolSequencer.Wire.TroubleCodes;

namespace EolSequencer.Simulators.ControlUnits.Obd;

/// <summary>
/// The emissions side of a unit (SAE J1979 over CAN). What it does not support it answers with silence, whoever asks.
/// </summary>
internal sealed class ObdUnit
{
    private static readonly InformationType[] Information =
        [InformationType.VehicleNumber, InformationType.CalibrationIds, InformationType.VerificationNumbers];

    private static readonly InformationType[] InformationWithoutVin = Information[1..];

    private readonly ObdParameter[] _parameters;
    private readonly byte[] _supported;
    private readonly string _calibrationId;
    private readonly uint _verification;
    private readonly bool _hasVin;

    /// <param name="parameters">The parameters beside 00, 01 and the further bitmaps, ascending.</param>
    /// <param name="calibrationId">Up to 16 characters.</param>
    /// <param name="verification">The number over its program.</param>
    /// <param name="hasVin">Whether it gives the vehicle number: one unit of a vehicle does.</param>
    public ObdUnit(ObdParameter[] parameters, string calibrationId, uint verification, bool hasVin)
    {
        (_parameters, _calibrationId, _verification, _hasVin) = (parameters, calibrationId, verification, hasVin);
        _supported = [Readiness.ParameterId, .. parameters.Select(parameter => parameter.Id)];
    }

    public Reply Serve(ControlUnit unit, ReadOnlySpan<byte> request) => (ObdService)request[0] switch
    {
        ObdService.CurrentData => CurrentData(unit, request[1..]),
        ObdService.StoredCodes => Codes(unit, ObdService.StoredCodes, TroubleCodeStatus.Confirmed, request),
        ObdService.PendingCodes => Codes(unit, ObdService.PendingCodes, TroubleCodeStatus.Pending, request),
        ObdService.PermanentCodes => Codes(unit, ObdService.PermanentCodes, TroubleCodeStatus.WarningIndicatorRequested, request),
        ObdService.ClearCodes when request.Length == 1 => Clear(unit),
        ObdService.VehicleInformation when VehicleInformation.TryReadRequest(request, out var type) => Inform(unit, type),
        _ => Reply.Silence,
    };

    private Reply CurrentData(ControlUnit unit, ReadOnlySpan<byte> asked)
    {
        if (asked.Length is 0 or > Wire.Obd.CurrentData.Most) return Reply.Silence;
        Span<byte> message = stackalloc byte[1 + (5 * Wire.Obd.CurrentData.Most)];
        message[0] = (byte)ObdService.CurrentData + 0x40;
        var length = 1;
        foreach (var id in asked)
        {
            message[length] = id;
            if (Read(unit, id, message[(length + 1)..]) is { } read) length += 1 + read;
        }

        return length > 1 ? message[..length].ToArray() : Reply.Silence;
    }

    private int? Read(ControlUnit unit, byte id, Span<byte> data)
    {
        if (id % 0x20 == 0) return ReadBitmap(id, data);
        if (id == Readiness.ParameterId)
        {
            var count = unit.Memory.Troubles.ConfirmedCount;
            new Readiness(count > 0, Math.Min(count, 127), false, SelfTests).Write().CopyTo(data);
            return Readiness.Length;
        }

        foreach (var parameter in _parameters)
        {
            if (parameter.Id != id) continue;
            parameter.Read(unit.Van, unit.Now, data);
            return parameter.Length;
        }

        return null;
    }

    // A new van: what needs a drive is not complete.
    private static SelfTestState[] SelfTests { get; } =
    [
        new(SelfTest.Misfire, true), new(SelfTest.FuelSystem, true), new(SelfTest.Components, true),
        new(SelfTest.Catalyst, false), new(SelfTest.EvaporativeSystem, false), new(SelfTest.OxygenSensor, false), new(SelfTest.OxygenSensorHeater, true),
    ];

    private int? ReadBitmap(byte id, Span<byte> data)
    {
        if (id != 0 && _supported[^1] <= id) return null;
        SupportBitmap.Write(id, _supported).CopyTo(data);
        return SupportBitmap.Length;
    }

    private Reply Inform(ControlUnit unit, InformationType type) => type switch
    {
        InformationType.Supported => VehicleInformation.MakeSupported(_hasVin ? Information : InformationWithoutVin),
        InformationType.VehicleNumber when _hasVin && unit.Network.Find("gateway")?.Memory.Vin is { Length: 17 } vin => VehicleInformation.MakeVehicleNumber(vin),
        InformationType.CalibrationIds => VehicleInformation.MakeCalibrationIds(_calibrationId),
        InformationType.VerificationNumbers => VehicleInformation.MakeVerificationNumbers(_verification),
        _ => Reply.Silence,
    };

    private static Reply Codes(ControlUnit unit, ObdService service, TroubleCodeStatus mask, ReadOnlySpan<byte> request)
    {
        if (request.Length != 1) return Reply.Silence;
        var codes = unit.Memory.Troubles.With(mask);
        var list = new TroubleCode[codes.Count];
        for (var i = 0; i < list.Length; i++) list[i] = codes[i].Code with { FailureType = null };
        return EmissionsCodes.MakeResponse(service, list);
    }

    private static Reply Clear(ControlUnit unit)
    {
        unit.Memory.Troubles.Clear();
        return EmissionsCodes.MakeClearResponse();
    }
}
