using System.Collections.Immutable;

namespace EolSequencer.Records.SequenceControl;

/// <summary>Where an approval is in force.</summary>
/// <param name="Station">Id of the only station; null: every station of the sequence's kind.</param>
/// <param name="From">From this moment on, UTC; null: from the moment it is given.</param>
/// <param name="FromVehicle">
/// Number of the first vehicle: in force for it, and for all others from the moment its first production run begins there. Null: for all.
/// </param>
/// <param name="Vins">A trial: these vehicles only; empty: no trial.</param>
public sealed record ApprovalScope(string? Station, DateTimeOffset? From, string? FromVehicle, ImmutableArray<string> Vins)
{
    /// <summary>All vehicles at all stations of the kind, at once.</summary>
    public static ApprovalScope Everywhere { get; } = new(null, null, null, []);

    /// <summary>True when it is for named vehicles only.</summary>
    public bool IsTrial => !Vins.IsEmpty;
}
