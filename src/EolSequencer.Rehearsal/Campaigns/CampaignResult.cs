using System.Collections.Immutable;
using EolSequencer.Model.Judging;

namespace EolSequencer.Rehearsal.Campaigns;

/// <summary>What one run of a campaign came to.</summary>
/// <param name="Verdict">Of the run.</param>
/// <param name="Releases">True: nothing would have kept the vehicle back.</param>
/// <param name="Judged">How many steps gave a verdict.</param>
/// <param name="TookMicroseconds">Virtual time of the run.</param>
/// <param name="Deviations">The steps that counted as worse than passed, by their last attempt, in the order in which they ended.</param>
/// <param name="Values">The numbers that were judged by a window; kept of good vehicles only.</param>
/// <param name="Trouble">Why there was no run; null when there was one.</param>
public sealed record CampaignResult(
    CampaignJob Job, Verdict Verdict, bool Releases, int Judged, long TookMicroseconds, ImmutableArray<Deviation> Deviations, ImmutableArray<JudgedNumber> Values, string? Trouble);

/// <summary>A step that counted as worse than passed.</summary>
/// <param name="At">When it ended, microseconds since the run began.</param>
public sealed record Deviation(string Step, Verdict Counted, long At);

/// <summary>A number and its window.</summary>
/// <param name="Step">The step, with the index or <c>takes</c> behind it where there is one.</param>
/// <param name="Low">Lower end; null when open.</param>
/// <param name="High">Upper end; null when open.</param>
public sealed record JudgedNumber(string Step, double Value, double? Low, double? High);
