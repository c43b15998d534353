using System.Collections.Immutable;
using EolSequencer.Records.Administration;

namespace EolSequencer.Records.SequenceControl;

/// <summary>A sequence's text was put forward for approval; the texts of its files are kept beside, under their hashes.</summary>
/// <param name="Hash">Of all its files, see <see cref="ContentHash"/>.</param>
internal sealed record SequenceSubmitted(
    string Id, string Sequence, int Revision, string VehicleType, string StationKind, string Hash, ImmutableArray<DraftFile> Files, string Note) : Act;

/// <summary>A text may be used in production.</summary>
/// <param name="From">In force from this moment on, UTC.</param>
/// <param name="Station">At this station only; null: at every station of the kind.</param>
/// <param name="FromVehicle">In force for this vehicle, and for all others once its first production run there has begun; null: for all.</param>
/// <param name="Vins">In force for these vehicles only, as a trial; empty: no trial.</param>
internal sealed record SequenceApproved(
    string Id, string Draft, string Sequence, int Revision, string VehicleType, string StationKind, string Hash, string Reason, string From,
    ImmutableArray<string> Vins, string? Station = null, string? FromVehicle = null) : Act;

/// <summary>A text may not be used in production any more, as far as this approval went.</summary>
internal sealed record ApprovalWithdrawn(string Id, string Reason) : Act;
