using System.Collections.Immutable;
using EolSequencer.Model.Judging;

namespace EolSequencer.Rehearsal.Campaigns;

/// <summary>What a campaign has shown so far.</summary>
public sealed record CampaignFindings
{
    public required CampaignHead Head { get; init; }

    /// <summary>Runs whose results are in it.</summary>
    public required int Done { get; init; }

    /// <summary>Every fault, in the order of the catalogue.</summary>
    public required ImmutableArray<FaultFinding> Faults { get; init; }

    /// <summary>Every step that some vehicle has, in written order.</summary>
    public required ImmutableArray<StepFinding> Steps { get; init; }

    /// <summary>What stands where a fault and a step meet.</summary>
    public required ImmutableDictionary<(string Fault, string Step), Catch> Catches { get; init; }

    /// <summary>Good vehicles that did not pass.</summary>
    public required ImmutableArray<FalseAlarm> FalseAlarms { get; init; }

    /// <summary>Two faults that let a vehicle pass although each of them alone keeps it back.</summary>
    public required ImmutableArray<MaskedPair> Masked { get; init; }

    /// <summary>Two faults at a time: how many runs there were.</summary>
    public required int PairRuns { get; init; }

    /// <summary>Numbers of good vehicles against their windows, the narrowest first.</summary>
    public required ImmutableArray<Margin> Margins { get; init; }

    /// <summary>Steps that good vehicles of one combination passed with some seeds and not with others, the shakiest first.</summary>
    public required ImmutableArray<FlakyStep> Flaky { get; init; }

    /// <summary>Runs that could not begin.</summary>
    public required ImmutableArray<string> Troubles { get; init; }

    /// <summary>Time of good vehicles, in seconds; null before the first has ended.</summary>
    public required RunTimes? Times { get; init; }

    /// <summary>For each step the combination that keeps the smallest distance from its window, the narrowest first.</summary>
    public IEnumerable<Margin> Narrowest => Margins.Where(margin => margin.Distance is not null).DistinctBy(margin => margin.Step);

    /// <summary>Faults that never kept a vehicle back in some run.</summary>
    public IEnumerable<FaultFinding> Escapes => Faults.Where(fault => !fault.Escapes.IsEmpty);

    /// <summary>Faults of class safety that escaped in some run.</summary>
    public IEnumerable<FaultFinding> SafetyEscapes => Escapes.Where(fault => fault.Class == "safety");

    /// <summary>Judged steps that no fault made count as worse than passed.</summary>
    public IEnumerable<StepFinding> NeverFailing => Steps.Where(step => step is { IsJudged: true, Faults: 0 });

    /// <summary>Judged steps of class safety that no fault of the vehicle reached; what a person did wrong does not count.</summary>
    public IEnumerable<StepFinding> SafetyUnreached => Steps.Where(step => step is { IsJudged: true, Class: "safety", VehicleFaults: 0 });

    /// <summary>False: a fault of class safety escaped, a good vehicle did not pass, or a run could not begin.</summary>
    public bool IsGood => !SafetyEscapes.Any() && FalseAlarms.IsEmpty && Troubles.IsEmpty;
}

/// <summary>One fault over all runs that had it alone.</summary>
/// <param name="Text">As it is injected.</param>
/// <param name="IsOfPerson">True: a mistake of the person, told by the step at which it is made.</param>
/// <param name="Caught">Runs in which it kept the vehicle back.</param>
/// <param name="FirstStep">The step that caught it most often as the first; null when none did.</param>
/// <param name="Soonest">The shortest time to that, in seconds; null when none did.</param>
/// <param name="Latest">The longest.</param>
/// <param name="Escapes">Runs that released the vehicle all the same.</param>
public sealed record FaultFinding(
    string Text, string Point, string Kind, string Class, string Effect, bool IsOfPerson, int Runs, int Caught, string? FirstStep, double? Soonest, double? Latest,
    ImmutableArray<RunKey> Escapes);

/// <summary>One step over all runs.</summary>
/// <param name="Faults">How many faults made it count as worse than passed.</param>
/// <param name="VehicleFaults">How many of them are no mistake of the person.</param>
public sealed record StepFinding(string Id, string Class, bool IsJudged, int Faults, int VehicleFaults);

/// <summary>A step that counted as worse than passed because of a fault.</summary>
/// <param name="Runs">In how many runs.</param>
/// <param name="Worst">The worst it counted as.</param>
/// <param name="IsFirst">True: in some run it was the first to.</param>
public sealed record Catch(int Runs, Verdict Worst, bool IsFirst);

/// <summary>What it takes to run one job again.</summary>
public sealed record RunKey(int Job, int Vehicle, string Options, ulong Seed, string Faults);

/// <summary>A good vehicle that did not pass.</summary>
public sealed record FalseAlarm(RunKey Run, Verdict Verdict, ImmutableArray<Deviation> Steps);

/// <summary>Two faults that hide each other.</summary>
public sealed record MaskedPair(string First, string Second, RunKey Run);

/// <summary>How far a number of good vehicles of one combination keeps from its window.</summary>
/// <param name="Runs">How many numbers.</param>
/// <param name="Mean">Their mean.</param>
/// <param name="Deviation">Their standard deviation, n − 1.</param>
/// <param name="Distance">From the mean to the nearer end of the window, in standard deviations; negative outside; null when they do not scatter.</param>
/// <param name="Outside">How many numbers lay outside.</param>
public sealed record Margin(string Step, string Options, int Runs, double Mean, double Deviation, double? Low, double? High, double? Distance, int Outside);

/// <summary>A step whose verdict on good vehicles of one combination depends on the seed.</summary>
/// <param name="Worse">In how many of the runs it counted as worse than passed.</param>
public sealed record FlakyStep(string Step, string Options, int Worse, int Runs);

/// <summary>Percentiles by the nearest rank.</summary>
public sealed record RunTimes(int Runs, double Median, double P95, double Longest);
