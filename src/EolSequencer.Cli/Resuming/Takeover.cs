using EolSequencer.Cli.Commands;
using EolSequencer.Cli.Output;
using EolSequencer.Model.Events;
using EolSequencer.Model.Plants;
using EolSequencer.Records;
using EolSequencer.Records.Reading;
using EolSequencer.Rehearsal.Simulated;
using EolSequencer.Station.Log;
using EolSequencer.Station.Resuming;
using EolSequencer.Station.Running;
using Spectre.Console;
using StationHold = EolSequencer.Records.Stations.StationHold;

namespace EolSequencer.Cli.Resuming;

/// <summary>
/// What a station does about runs that broke off before it was started: it leaves the vehicle safe by itself, and goes on with
/// the run only when the same vehicle has been identified again. All others end as interrupted.
/// </summary>
internal sealed class Takeover(IAnsiConsole told, RunChoices choices, StopSignals stopping, DataFolder folder, StationHold hold, StationLog log)
{
    /// <summary>Leaves safe, and gives back the run that goes on; null: none does, and a new one begins.</summary>
    /// <param name="ready">The vehicle that has been identified now.</param>
    public OneRun? Run(ReadyRun ready)
    {
        OneRun? goesOn = null;
        foreach (var (place, summary) in BrokenOffRun.Of(folder, hold.Station).Index())
        {
            if (Load(summary, ready.Vehicle.Station) is not { } broken) continue;
            if (place == 0) broken = LeaveSafe(broken, ready.Vehicle.Station);
            var mode = SimulatedStation.ModeOf(ready.Vehicle.Station, ready.Vehicle.Sequence);
            var whyNot = place > 0 ? "a later run has begun"
                : choices.Anew ? "a new run was asked for"
                : broken.WhyNot(ready.Vehicle.Order, ready.Vehicle.Plant, mode, TimeProvider.System.GetUtcNow());
            if (whyNot is null) goesOn = Again(broken) with { Script = ready.Script };
            else End(broken, whyNot);
        }

        return goesOn;
    }

    private BrokenOffRun? Load(RunSummary summary, StationFile station)
    {
        var tail = folder.Record.VerifyTail();
        if (!tail.IsWhole)
        {
            Say($"run {summary.Run} broke off, and its record is not whole: 'eol verify' tells what; it is left as it is");
            return null;
        }

        var (broken, diagnostics) = BrokenOffRun.Load(folder.Record.Runs.Load(summary.Run)!, station, ExpressionsFolder.Open());
        if (broken is not null) return broken;
        DiagnosticLines.Write(told, diagnostics);
        Say($"run {summary.Run} broke off, and this version of the program does not accept its sequence; leave the vehicle safe by hand");
        return null;
    }

    private BrokenOffRun LeaveSafe(BrokenOffRun broken, StationFile station)
    {
        var judged = broken.Events.OfType<Judged>().Select(step => step.Step).Distinct().Count();
        Say($"run {broken.Run} of {broken.Begun.Order.Vin} was interrupted at {broken.BrokeOff.UtcDateTime:yyyy-MM-dd HH:mm:ss} UTC, {judged} of {broken.Begun.Planned} steps done; leaving the vehicle safe");
        var run = Again(broken);
        foreach (var fault in choices.IsReal ? new RealRun(told, choices, stopping).LeaveSafe(run) : VirtualRun.LeaveSafe(run.Virtual(), stopping.Token))
        {
            log.Refused(fault);
            Say($"the vehicle could not be left safe: {fault}; see to it by hand");
        }

        return Load(folder.Record.Runs.Find(broken.Run)!, station)!;
    }

    private void End(BrokenOffRun broken, string why)
    {
        broken.End(Again(broken).Journal, TimeProvider.System, null);
        Say($"run {broken.Run} does not go on and ends as interrupted: {why}");
    }

    private OneRun Again(BrokenOffRun broken)
    {
        SimulationOptions.Faults(broken.Begun.Injected, out var faults);
        log.TakeUp(broken.Run);
        return new OneRun
        {
            Vehicle = broken.Vehicle,
            Run = broken.Run,
            Journal = hold.ContinueRun(broken.Run),
            Note = log.Noted,
            Serials = folder.Record.Serials,
            Runs = folder.Record.Runs,
            Seed = broken.Begun.Seed ?? choices.Seed,
            Faults = faults,
            Only = broken.Begun.OnlySteps,
            Past = broken.Events,
        };
    }

    private void Say(string text)
    {
        log.Noted(text);
        told.MarkupLineInterpolated($"[yellow]{text}[/]");
    }
}
