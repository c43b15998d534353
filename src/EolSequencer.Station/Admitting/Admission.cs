using System.Collections.Immutable;
using EolSequencer.Engine.Planning;
using EolSequencer.Model.Events;
using EolSequencer.Model.Plants;
using EolSequencer.Model.Vehicles;
using EolSequencer.Records;
using EolSequencer.Records.History;
using EolSequencer.Station.Identifying;

namespace EolSequencer.Station.Admitting;

/// <summary>Whether a vehicle may be run now, by what is recorded of it.</summary>
/// <param name="Against">What forbids a run that counts, for people; empty: nothing.</param>
/// <param name="Notes">What whoever is at the station should know.</param>
public sealed record Admission(ImmutableArray<string> Against, ImmutableArray<string> Notes)
{
    /// <summary>Asks the record. A rehearsal is let in always: the record of rehearsals knows nothing of other stations.</summary>
    /// <exception cref="RecordFault">The record cannot be read.</exception>
    public static Admission Of(RecordFolder record, IdentifiedVehicle vehicle, RunMode mode)
    {
        var needs = vehicle.Sequence.Needs.Where(kind => IsOnRoute(vehicle.Plant, kind, vehicle.Order)).ToList();
        if (mode != RunMode.Production) return new Admission([], needs.Count == 0 ? [] : [$"before '{vehicle.Sequence.Id}' a vehicle must have passed {string.Join(", ", needs)}; a rehearsal does not ask for that"]);
        var vin = vehicle.Order.Vin.Text;
        var state = record.Vehicles.Of(vin);
        if (state.Vin != vin) return new Admission([$"{vin} was corrected to {state.Vin}; identify the vehicle by that number"], []);
        return new Admission([.. needs.Select(kind => WhyNotPassed(kind, state.At(kind))).OfType<string>()], NotesOf(record, vehicle.Order));
    }

    /// <summary>A station kind that vehicles of this order do not come to cannot be asked for.</summary>
    private static bool IsOnRoute(Plant plant, string kind, Order order) =>
        plant.Route.Where(stop => stop.StationKind == kind).ToList() is not [_, ..] stops || stops.Exists(stop => stop.When is null || OrderScope.IsTrue(stop.When, order));

    private static string? WhyNotPassed(string kind, StationKindState? state)
    {
        if (state is null) return $"station kind '{kind}' comes first: the vehicle was never run there as a whole";
        if (state.HasPassed) return null;
        var why = !state.Unfinished.IsEmpty ? $"run {state.Unfinished[0]} has not ended"
            : !state.HasJudged ? $"run {state.Run.Run} judged nothing"
            : $"{string.Join(", ", state.Open.Take(5).Select(step => step.Step))}{(state.Open.Count() > 5 ? " and more" : "")} did not pass";
        return $"station kind '{kind}' comes first: {why}";
    }

    private static ImmutableArray<string> NotesOf(RecordFolder record, Order order)
    {
        var arrival = record.Vehicles.Arrival(order);
        var notes = ImmutableArray.CreateBuilder<string>();
        if (arrival.IsReleased) notes.Add($"{order.Vin} was released; with this run it has returned and must be released anew");
        if (arrival.Changed is [_, ..] changed) notes.Add($"the order is another one than in run {arrival.Before}: {string.Join(", ", changed)}");
        return notes.ToImmutable();
    }
}
