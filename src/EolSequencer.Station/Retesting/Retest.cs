using System.Collections.Immutable;
using EolSequencer.Engine.Planning;
using EolSequencer.Language.Diagnostics;
using EolSequencer.Language.Loading;
using EolSequencer.Model.Events;
using EolSequencer.Model.Plants;
using EolSequencer.Records.History;
using EolSequencer.Records.Reading;
using EolSequencer.Station.Identifying;

namespace EolSequencer.Station.Retesting;

/// <summary>A retest that may begin.</summary>
/// <param name="Of">Id of the whole run that it names.</param>
/// <param name="Only">Ids of the groups and steps that are repeated.</param>
/// <param name="Gone">Steps that did not pass and that the newer revision has no more: they stay as they are.</param>
public sealed record RetestPlan(IdentifiedVehicle Vehicle, string Of, ImmutableArray<string> Only, ImmutableArray<string> Gone);

/// <summary>What looking for a retest came to.</summary>
/// <param name="Plan">Null when it may not begin.</param>
/// <param name="Why">Why it may not, for people; null when it may, or when the diagnostics say why.</param>
/// <param name="Diagnostics">What is wrong with the files.</param>
public sealed record RetestResult(RetestPlan? Plan, string? Why, IReadOnlyList<Diagnostic> Diagnostics);

/// <summary>
/// Finds what a retest repeats. It judges the vehicle as the run had it: its order and the sequence's exact text stand in the record.
/// </summary>
public static class Retest
{
    /// <summary>Prepares a retest. Trouble is a result, never an exception.</summary>
    /// <exception cref="Records.RecordFault">The record cannot be read.</exception>
    public static RetestResult Prepare(RetestRequest request)
    {
        var station = StationLoader.Load(request.StationFile);
        if (station.Station is not { } at) return new RetestResult(null, null, station.Diagnostics);
        if (Named(request, at, out var why) is not { } state) return new RetestResult(null, why, []);
        var begun = (RunBegun)request.Record.Runs.Load(state.Run.Run)!.Events[0];
        var loaded = request.SequenceFile is { } file ? SequenceLoader.Load(file, request.Cache) : SequenceLoader.LoadRecorded(begun.Sources, begun.Sequence, request.Cache);
        if (loaded is not { Sequence: { } sequence, Plant: { } plant }) return new RetestResult(null, null, loaded.Diagnostics);
        if (sequence.Id != begun.Sequence || sequence.Revision < begun.Revision)
        {
            return new RetestResult(null, $"run {begun.Run} had sequence '{begun.Sequence}' revision {begun.Revision}; '{sequence.Id}' revision {sequence.Revision} is no newer one of it", []);
        }

        var misfits = StationFit.Check(at, sequence).Concat(OrderLoader.CheckType(begun.Order, sequence)).ToList();
        if (misfits.Exists(one => one.Severity == Severity.Error)) return new RetestResult(null, null, misfits);
        var open = state.Open.Select(step => step.Step).ToHashSet(StringComparer.Ordinal);
        var whole = Planner.For(sequence, begun.Order);
        var only = RetestList.Of(whole, open);
        if (only.IsEmpty) return new RetestResult(null, $"what did not pass in run {begun.Run} stands before or behind its steps ({string.Join(", ", open)}); run the whole sequence", []);
        return new RetestResult(new RetestPlan(new IdentifiedVehicle(at, plant, sequence, begun.Order), begun.Run, only, [.. open.Except(whole.Counting.Select(step => step.Id))]), null, misfits);
    }

    /// <summary>The vehicle at the station kind of the run, if a retest of it can tell anything.</summary>
    private static StationKindState? Named(RetestRequest request, StationFile station, out string? why)
    {
        why = null;
        var named = request.Record.Runs.Find(request.Run);
        var whole = named is { RetestOf: { } of } ? request.Record.Runs.Find(of) : named;
        why = whole is null ? $"{request.Record.Path} has no run '{request.Run}'; 'eol show' lists them" : Misfit(request, station, whole);
        if (why is null && whole!.Mode == RunMode.Production && request.Record.Vins.Current(whole.Vin) is var right && right != whole.Vin)
        {
            why = $"run {whole.Run} was of {whole.Vin}, which was corrected to {right}; run the whole sequence under that number";
        }

        if (why is not null) return null;
        var state = request.Record.Vehicles.Of(whole!.Vin, whole.Mode).At(whole.StationKind);
        if (state is null || state.Run.Run != whole.Run) why = $"run {whole.Run} is not the newest whole run of {whole.Vin} at {whole.StationKind}{(state is null ? "" : $": that is {state.Run.Run}")}; name that one";
        else if (state.Unfinished is [var unfinished, ..]) why = $"run {unfinished} of this vehicle has not ended; end it first";
        else if (!state.Open.Any()) why = $"everything that run {whole.Run} judged has passed; there is nothing to repeat";
        return why is null ? state : null;
    }

    private static string? Misfit(RetestRequest request, StationFile station, RunSummary whole)
    {
        if (whole.IsPartial) return $"run {whole.Run} had only some of the steps; a retest names a whole run";
        if (whole.Mode != request.Mode) return $"run {whole.Run} was {(whole.Mode == RunMode.Production ? "a production run" : whole.Mode == RunMode.Check ? "a check of the station" : "a rehearsal")}; at station '{station.Id}' only {(request.Mode == RunMode.Production ? "production runs" : "rehearsals")} are made";
        if (whole.StationKind != station.StationKind) return $"run {whole.Run} was at station kind '{whole.StationKind}', station '{station.Id}' is of kind '{station.StationKind}'";
        return request.Vin is { } vin && vin != whole.Vin ? $"run {whole.Run} was of {whole.Vin}, here stands {vin}" : null;
    }
}
