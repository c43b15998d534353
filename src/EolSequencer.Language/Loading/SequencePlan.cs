using System.Collections.Immutable;

namespace EolSequencer.Language.Loading;

/// <summary>How many steps a sequence has, and how long they are planned to take, for every combination of options.</summary>
/// <param name="Sequence">Id of the sequence.</param>
/// <param name="CycleTime">What the station may take; null: nothing is planned.</param>
/// <param name="Options">The options, and the facts of the order that conditions ask for.</param>
/// <param name="Vehicles">One for each combination that can be built.</param>
/// <param name="IsPairwise">True: there are more than 4,096 combinations, and these show every two values together that can be.</param>
/// <param name="Impossible">How many combinations were left out because nobody builds them; null when not all were looked at.</param>
public sealed record SequencePlan(
    string Sequence, TimeSpan? CycleTime, ImmutableArray<string> Options, ImmutableArray<PlannedVehicle> Vehicles, bool IsPairwise, int? Impossible);

/// <summary>One combination of options.</summary>
/// <param name="Values">What the vehicle has, in the order of the options.</param>
/// <param name="Steps">How many steps apply to it, each loop value counted.</param>
/// <param name="Judged">How many of them give a verdict.</param>
/// <param name="Time">The planned time of all of them.</param>
public sealed record PlannedVehicle(ImmutableArray<string> Values, int Steps, int Judged, TimeSpan Time);
