using EolSequencer.Records.Administration;

namespace EolSequencer.Records.Correcting;

/// <summary>What was recorded under a number is of the vehicle with another one. The runs keep the number that they were begun with.</summary>
/// <param name="From">The wrong number.</param>
/// <param name="To">The right one. When that one was corrected to the wrong one before, this takes it back.</param>
/// <param name="Merged">True: both have records of their own, and they are one vehicle. Null: only one has.</param>
internal sealed record VinCorrected(string From, string To, string Reason, bool? Merged = null) : Act;
