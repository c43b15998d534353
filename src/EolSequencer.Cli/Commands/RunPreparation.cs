using System.Collections.Immutable;
using EolSequencer.Cli.Operators;
using EolSequencer.Cli.Output;
using EolSequencer.Language.Diagnostics;
using EolSequencer.Language.Loading;
using EolSequencer.Language.Scripts;
using EolSequencer.Model.Events;
using EolSequencer.Model.Plants;
using EolSequencer.Records;
using EolSequencer.Rehearsal.Simulated;
using EolSequencer.Simulators.Faults;
using EolSequencer.Station.Identifying;
using EolSequencer.Station.Retesting;
using Spectre.Console;

namespace EolSequencer.Cli.Commands;

/// <summary>Loads what a run needs and tells everything that is wrong with it.</summary>
/// <param name="told">Where people read what is wrong.</param>
internal sealed class RunPreparation(IAnsiConsole told, RunChoices choices)
{
    /// <summary>Everything loaded and fitting together; null: already told.</summary>
    public ReadyRun? Prepare()
    {
        var (vehicle, only, retestOf, found, why) = choices.Retest is { } run ? Again(run) : Identified();
        var script = choices.Operator is [OperatorChoice.Script, var file] ? ScriptLoader.Load(file) : null;
        DiagnosticLines.Write(told, found.Concat(script?.Diagnostics ?? []).Distinct());
        var wrong = SimulationOptions.Faults(choices.Faults, out var faults);
        var fault = why ?? wrong ?? OperatorChoice.Fault(choices.Operator);
        if (fault is null && vehicle is not null) fault = Misfit(vehicle.Station, faults) ?? Unseen(vehicle, faults);
        if (fault is not null) Refusals.Document(told, fault);
        return fault is null && vehicle is not null && (script is null || script.Script is not null)
            ? new ReadyRun(vehicle, faults, script?.Script, only, retestOf)
            : null;
    }

    private Found Identified()
    {
        var identified = Identify.Vehicle(new IdentifyRequest
        {
            StationFile = choices.Station,
            OrderFile = choices.Vin is null ? choices.Order : null,
            Vin = choices.Order is null ? choices.Vin : null,
            SequenceFile = choices.Sequence,
            Cache = ExpressionsFolder.Open(),
        });
        var fault = (choices.Order, choices.Vin) is (null, null) or (not null, not null) ? "write either --order FILE or --vin VIN" : null;
        return new Found(identified.Vehicle, [.. choices.Only], null, identified.Diagnostics, fault);
    }

    private Found Again(string run)
    {
        if (choices.Order is not null) return Found.Nothing("a retest takes the order that the record keeps of the run; leave --order out");
        if (choices.Only.Count > 0) return Found.Nothing("a retest repeats all that did not pass; leave --only out");
        var station = StationLoader.Load(choices.Station);
        if (station.Station is not { } at) return new Found(null, [], null, station.Diagnostics, null);
        var opened = RecordFolder.Open(choices.Data ?? at.DataFolder);
        if (opened is not FolderResult<RecordFolder>.Opened { Folder: var record }) return Found.Nothing(((FolderResult<RecordFolder>.Refused)opened).Why);
        var (plan, why, diagnostics) = Retest.Prepare(new RetestRequest
        {
            Record = record,
            Run = run,
            StationFile = choices.Station,
            Mode = SimulatedStation.Serves(at) ? RunMode.Rehearsal : RunMode.Production,
            Vin = choices.Vin,
            SequenceFile = choices.Sequence,
            Cache = ExpressionsFolder.Open(),
        });
        if (plan is { Gone: [_, ..] gone }) told.MarkupLineInterpolated($"[yellow]not in this revision, so they stay as they are[/]: {string.Join(", ", gone)}");
        return new Found(plan?.Vehicle, plan?.Only ?? [], plan?.Of, diagnostics, why);
    }

    /// <summary>What is to be run.</summary>
    /// <param name="Why">What speaks against it, for people; null: nothing, or the diagnostics do.</param>
    private sealed record Found(IdentifiedVehicle? Vehicle, ImmutableArray<string> Only, string? RetestOf, IReadOnlyList<Diagnostic> Diagnostics, string? Why)
    {
        public static Found Nothing(string why) => new(null, [], null, [], why);
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
