using System.Collections.Immutable;
using EolSequencer.Cli.Operators;
using EolSequencer.Cli.Output;
using EolSequencer.Language.Scripts;
using EolSequencer.Model.Plants;
using EolSequencer.Rehearsal.Simulated;
using EolSequencer.Simulators.Faults;
using EolSequencer.Station.Identifying;
using Spectre.Console;

namespace EolSequencer.Cli.Commands;

/// <summary>Loads what a run needs and tells everything that is wrong with it.</summary>
/// <param name="told">Where people read what is wrong.</param>
internal sealed class RunPreparation(IAnsiConsole told, RunChoices choices)
{
    /// <summary>Everything loaded and fitting together; null: already told.</summary>
    public ReadyRun? Prepare()
    {
        var identified = Identify.Vehicle(new IdentifyRequest
        {
            StationFile = choices.Station,
            OrderFile = choices.Vin is null ? choices.Order : null,
            Vin = choices.Order is null ? choices.Vin : null,
            SequenceFile = choices.Sequence,
            Cache = ExpressionsFolder.Open(),
        });
        var script = choices.Operator is [OperatorChoice.Script, var file] ? ScriptLoader.Load(file) : null;
        DiagnosticLines.Write(told, identified.Diagnostics.Concat(script?.Diagnostics ?? []).Distinct());
        var fault = (choices.Order, choices.Vin) is (null, null) or (not null, not null) ? "write either --order FILE or --vin VIN" : null;
        var wrong = SimulationOptions.Faults(choices.Faults, out var faults);
        fault ??= wrong ?? OperatorChoice.Fault(choices.Operator);
        if (fault is null && identified.Vehicle is { } found) fault = Misfit(found.Station, faults) ?? Unseen(found, faults);
        if (fault is not null) Refusals.Document(told, fault);
        return fault is null && identified.Vehicle is { } vehicle && (script is null || script.Script is not null)
            ? new ReadyRun(vehicle, faults, script?.Script)
            : null;
    }

    private static string? Unseen(IdentifiedVehicle vehicle, ImmutableArray<InjectedFault> faults) => faults
        .Select(fault => FaultFit.WhyUnseen(fault, vehicle.Sequence, vehicle.Order) is { } why ? $"--inject {fault}: {why}" : null)
        .FirstOrDefault(why => why is not null);

    private string? Misfit(StationFile station, ImmutableArray<InjectedFault> faults)
    {
        var isSimulated = SimulatedStation.Serves(station);
        if (!isSimulated && !choices.IsReal) return $"station '{station.Id}' has real devices: they need --clock real";
        if (!isSimulated && !faults.IsEmpty) return $"--inject is for simulated vehicles; station '{station.Id}' has none";
        if (choices.Operator[0] == OperatorChoice.Terminal && !choices.IsReal) return "--operator terminal needs --clock real";
        if (!isSimulated && choices.Operator[0] != OperatorChoice.Terminal) return $"station '{station.Id}' has no simulated vehicle to work on: write --operator terminal";
        return choices.Repeat < 1 ? "--repeat counts from 1" : null;
    }
}
