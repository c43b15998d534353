using EolSequencer.Devices.Diagnostics;
using EolSequencer.Model.Devices;
using EolSequencer.Model.Judging;
using EolSequencer.Model.Ports;
using EolSequencer.Wire.Uds;

namespace EolSequencer.Devices.VehicleBus;

/// <summary>What control units do on request. The first unit that does not confirm ends the action.</summary>
internal sealed class UnitActions(UnitDirectory units, SessionKeeper sessions, IKeyAlgorithm? keys, TimeProvider time)
{
    // What may be under the tester's control, in the order in which it was taken over.
    private readonly List<(string Unit, ushort Identifier)> _controlled = [];

    public ValueTask<Reading> ActAsync(ActionRequest request, CancellationToken cancel) => request.Action.Source switch
    {
        ActionSource.Control control => ControlAsync(control, request, cancel),
        ActionSource.Write write => WriteAsync(write, request, cancel),
        ActionSource.Routine routine => RoutineAsync(routine, request, cancel),
        ActionSource.Service { Kind: ServiceAct.ReturnControl } service => ReturnControlAsync([.. units.Meant(service.Ecu, request.Index)], cancel),
        ActionSource.Service service => ServiceAsync(service, request, cancel),
        _ => throw new InvalidOperationException($"the vehicle type does not say how '{request.Action.Name}' is done"),
    };

    private async ValueTask<Reading> ControlAsync(ActionSource.Control control, ActionRequest request, CancellationToken cancel)
    {
        var (state, fault) = FormCodec.Encode(control.Form, request.To!);
        if (state is null) return Unfit(request, fault!);
        var unit = control.Ecu ?? request.Index!;
        var identifier = (ushort)control.Identifiers[control.Ecu is null ? "" : request.Index ?? ""];

        // Taken over from the moment of asking: an answer that is lost must not leave an output on.
        var isNew = !_controlled.Contains((unit, identifier));
        if (isNew) _controlled.Add((unit, identifier));
        var end = await AskAsync(unit, InputOutputControl.MakeRequest(identifier, ControlParameter.ShortTermAdjustment, state), cancel);
        if (isNew && end.Missing == MissingCause.Refused) _controlled.Remove((unit, identifier));
        return Confirm(end);
    }

    private async ValueTask<Reading> WriteAsync(ActionSource.Write write, ActionRequest request, CancellationToken cancel)
    {
        var (record, fault) = FormCodec.Encode(write.Form, request.To!);
        if (record is null) return Unfit(request, fault!);
        var unit = write.Ecu ?? request.Index!;
        if (write.AccessLevel > 0 && await UnlockAsync(unit, (byte)write.AccessLevel, cancel) is { } locked) return locked;
        return Confirm(await AskAsync(unit, WriteDataByIdentifier.MakeRequest((ushort)write.Identifier, record), cancel));
    }

    private async ValueTask<Reading> RoutineAsync(ActionSource.Routine routine, ActionRequest request, CancellationToken cancel)
    {
        var unit = routine.Ecu ?? request.Index!;
        var end = await AskAsync(unit, RoutineControl.MakeRequest(RoutineControl.Act.Start, (ushort)routine.Identifier), cancel);
        if (!end.IsPositive || routine.Result is not { } form) return Confirm(end);
        var status = RoutineControl.ReadResponse(end.Response);
        if (status.Fault is { } fault) return Reading.None(MissingCause.ShortAnswer, end.Stamp, $"{unit}: {fault}", end.Response);
        var (value, missing, detail) = FormCodec.Decode(form, null, status.Value.Span);
        return value is not null ? Reading.Of(value, end.Stamp, end.Response) : Reading.None(missing, end.Stamp, $"{unit}: {detail}", end.Response);
    }

    private async ValueTask<Reading> ServiceAsync(ActionSource.Service service, ActionRequest request, CancellationToken cancel)
    {
        byte[] message = service.Kind switch
        {
            ServiceAct.ClearTroubleCodes => ClearDiagnosticInformation.MakeRequest(),
            ServiceAct.ExtendedSession => DiagnosticSessionControl.MakeRequest(DiagnosticSession.Extended),
            ServiceAct.DefaultSession => DiagnosticSessionControl.MakeRequest(DiagnosticSession.Default),
            ServiceAct.Reset => EcuReset.MakeRequest(ResetKind.Hard),
            _ => throw new InvalidOperationException($"unknown service {service.Kind}"),
        };
        var last = Reading.Confirmed(time.GetTimestamp());
        foreach (var unit in units.Meant(service.Ecu, request.Index))
        {
            var end = await AskAsync(unit, message, cancel);
            if (!end.IsPositive) return Confirm(end);
            sessions.Note(unit, service.Kind, end.Response.Span);

            // Outputs fall back by themselves at the end of the session (ISO 14229-1, service 2F).
            if (service.Kind is ServiceAct.DefaultSession or ServiceAct.Reset) _controlled.RemoveAll(output => output.Unit == unit);
            last = Confirm(end);
        }

        return last;
    }

    /// <summary>Every output that this run has taken over goes back to its control unit; all are tried.</summary>
    private async ValueTask<Reading> ReturnControlAsync(HashSet<string> meant, CancellationToken cancel)
    {
        var result = Reading.Confirmed(time.GetTimestamp());
        foreach (var (unit, identifier) in _controlled.ToArray())
        {
            if (!meant.Contains(unit)) continue;
            var end = await AskAsync(unit, InputOutputControl.MakeRequest(identifier, ControlParameter.ReturnControl), cancel);
            if (end.IsPositive) _controlled.Remove((unit, identifier));
            if (result.Missing is null) result = Confirm(end);
        }

        return result;
    }

    /// <summary>Opens a security level; null when it is open.</summary>
    private async ValueTask<Reading?> UnlockAsync(string unit, byte level, CancellationToken cancel)
    {
        var asked = await AskAsync(unit, SecurityAccess.MakeSeedRequest(level), cancel);
        if (!asked.IsPositive) return Confirm(asked);
        var seed = SecurityAccess.ReadSeed(asked.Response);
        if (seed.Fault is { } fault) return Reading.None(MissingCause.ShortAnswer, asked.Stamp, $"{unit}: {fault}", asked.Response);
        if (SecurityAccess.IsUnlocked(seed.Value.Span)) return null;
        if (keys?.KeyOf(unit, level, seed.Value.Span) is not { } key)
        {
            return Reading.None(MissingCause.Refused, asked.Stamp, $"{unit}: the station has no key for security level {level}", asked.Response);
        }

        var sent = await AskAsync(unit, SecurityAccess.MakeKeyRequest(level, key), cancel);
        return sent.IsPositive ? null : Confirm(sent);
    }

    private ValueTask<ExchangeEnd> AskAsync(string unit, byte[] request, CancellationToken cancel) => units.Of(unit).RequestAsync(request, cancel);

    private Reading Unfit(ActionRequest request, string fault) => Reading.None(MissingCause.Refused, time.GetTimestamp(), $"{request.Action.Name}: {fault}");

    private static Reading Confirm(in ExchangeEnd end) => end.Missing is { } cause
        ? Reading.None(cause, end.Stamp, end.Detail!, end.Response)
        : Reading.Confirmed(end.Stamp, end.Response);
}
