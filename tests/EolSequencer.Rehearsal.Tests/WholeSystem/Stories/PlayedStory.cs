using System.Collections.Immutable;
using EolSequencer.Records.Reading;
using EolSequencer.Records.Verify;

namespace EolSequencer.Rehearsal.Tests.WholeSystem.Stories;

/// <summary>What has come of a story.</summary>
/// <param name="Openings">What the tail of the record looked like each time the program began.</param>
/// <param name="Verified">The whole record at the end.</param>
/// <param name="Runs">The runs that the record lists at the end.</param>
internal sealed record PlayedStory(
    Story Story, ImmutableArray<TestedVehicle> Vehicles, ImmutableArray<VerifyReport> Openings, VerifyReport Verified, ImmutableArray<RunSummary> Runs);
