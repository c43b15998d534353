using EolSequencer.Statistics.Proportions;

namespace EolSequencer.Rehearsal.Replay.WhatIf;

/// <summary>
/// Vehicles of which everything passed at the first attempt of their first whole run: then, and by the revision. Vehicles that
/// the record does not decide could be either, so what is said of the revision has two ends: to leave them out would leave out mostly
/// those that are in order, because a single miss decides.
/// </summary>
/// <param name="Vehicles">All vehicles.</param>
/// <param name="Was">Through the first time then.</param>
/// <param name="Gained">Not through then, through by the revision.</param>
/// <param name="Lost">Through then, not by the revision.</param>
/// <param name="OpenThrough">Through then, undecidable by the revision.</param>
/// <param name="OpenOthers">Not through then, undecidable by the revision.</param>
public sealed record FirstTimeThrough(long Vehicles, long Was, long Gained, long Lost, long OpenThrough, long OpenOthers)
{
    public long Undecidable => OpenThrough + OpenOthers;

    /// <summary>Through by the revision if nothing undecidable is.</summary>
    public long IsAtLeast => Was + Gained - Lost - OpenThrough;

    /// <summary>Through by the revision if everything undecidable is.</summary>
    public long IsAtMost => Was + Gained - Lost + OpenOthers;

    /// <summary>The share then; null without vehicles.</summary>
    public ProportionInterval? ShareThen => WilsonInterval.Of(Was, Vehicles);

    /// <summary>The smallest share by the revision.</summary>
    public ProportionInterval? LeastNow => WilsonInterval.Of(IsAtLeast, Vehicles);

    /// <summary>The greatest share by the revision.</summary>
    public ProportionInterval? MostNow => WilsonInterval.Of(IsAtMost, Vehicles);

    /// <summary>How far the share moves at the worst.</summary>
    public ProportionInterval? LeastChange => PairedDifference.Of(Gained, Lost + OpenThrough, Vehicles);

    /// <summary>How far the share moves at the best.</summary>
    public ProportionInterval? MostChange => PairedDifference.Of(Gained + OpenOthers, Lost, Vehicles);
}
