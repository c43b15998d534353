using System.Collections.Immutable;
using EolSequencer.Model.Judging;

namespace EolSequencer.Rehearsal.Replay.WhatIf;

/// <summary>A run that comes out otherwise.</summary>
/// <param name="Is">Its verdict by the revision, of the steps that are decided.</param>
/// <param name="IsFinal">False: undecidable steps could make it worse.</param>
/// <param name="Steps">The steps with another verdict.</param>
/// <param name="Undecidable">How many steps are undecidable.</param>
public sealed record RunChange(string Run, string Vin, Verdict Was, Verdict Is, bool IsFinal, ImmutableArray<string> Steps, int Undecidable);
