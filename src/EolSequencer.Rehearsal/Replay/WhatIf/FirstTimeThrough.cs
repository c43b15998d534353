using EolSequencer.Statistics.Proportions;

namespace EolSequencer.Rehearsal.Replay.WhatIf;

/// <summary>
/// Vehicles that passed everything at the first attempt of their first whole run: then, and by the revision. Vehicles that the
/// record does not decide are counted apart and stand in no figure.
/// </summary>
/// <param name="Vehicles">Vehicles that are decided.</param>
/// <param name="Was">Of them, through the first time then.</param>
/// <param name="Gained">Not through then, through by the revision.</param>
/// <param name="Lost">Through then, not by the revision.</param>
/// <param name="Undecidable">Vehicles that are not decided.</param>
public sealed record FirstTimeThrough(long Vehicles, long Was, long Gained, long Lost, long Undecidable)
{
    /// <summary>Of the decided, through the first time by the revision.</summary>
    public long Is => Was + Gained - Lost;

    /// <summary>The share then; null without vehicles.</summary>
    public ProportionInterval? ShareThen => WilsonInterval.Of(Was, Vehicles);

    /// <summary>The share by the revision.</summary>
    public ProportionInterval? ShareNow => WilsonInterval.Of(Is, Vehicles);

    /// <summary>How far the share moves.</summary>
    public ProportionInterval? Change => PairedDifference.Of(Gained, Lost, Vehicles);
}
