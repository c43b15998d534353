using EolSequencer.Model.Events;
using EolSequencer.Model.Sequences;

namespace EolSequencer.Rehearsal.Replay;

/// <summary>Whether a sequence can say anything of a recorded run.</summary>
public static class ReplayFit
{
    /// <summary>Why it cannot, for people; null when it can.</summary>
    public static string? Misfit(CheckedSequence sequence, RunBegun begun)
    {
        if (sequence.VehicleType.Id != begun.Order.VehicleType)
        {
            return $"run {begun.Run} is of a vehicle of type '{begun.Order.VehicleType}', the sequence '{sequence.Id}' tests '{sequence.VehicleType.Id}'";
        }

        if (sequence.StationKind != begun.StationKind)
        {
            return $"run {begun.Run} is of a station of kind '{begun.StationKind}', the sequence '{sequence.Id}' is for '{sequence.StationKind}'";
        }

        return sequence.VehicleType.Options.FirstOrDefault(option => !begun.Order.Options.ContainsKey(option.Name)) is { } option
            ? $"the order of run {begun.Run} says nothing of the option '{option.Name}', which the vehicle type has now"
            : null;
    }
}
