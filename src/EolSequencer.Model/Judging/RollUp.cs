using System.Collections.Immutable;

namespace EolSequencer.Model.Judging;

/// <summary>What the steps of a run come to: how many counted as what, so that an error never hides a fail.</summary>
/// <param name="None">Steps that judged nothing, or only for the record.</param>
/// <param name="Pass">Steps that count as passed.</param>
/// <param name="Inconclusive">Steps without a decision, not reached and passed over included.</param>
/// <param name="Fail">Steps that count as failed.</param>
/// <param name="Error">Steps that the test equipment could not do.</param>
/// <remarks>Steps that are not applicable or not needed stand in none of the numbers.</remarks>
public sealed record RollUp(int None, int Pass, int Inconclusive, int Fail, int Error)
{
    public static RollUp Empty { get; } = new(0, 0, 0, 0, 0);

    /// <summary>The worst verdict that occurs; <see cref="Verdict.None"/> when nothing was judged.</summary>
    public Verdict Verdict =>
        Error > 0 ? Verdict.Error
        : Fail > 0 ? Verdict.Fail
        : Inconclusive > 0 ? Verdict.Inconclusive
        : Pass > 0 ? Verdict.Pass
        : Verdict.None;

    /// <summary>True when the vehicle may go on as far as this run is concerned; <c>none</c> and <c>inconclusive</c> never release.</summary>
    public bool Releases => Verdict == Verdict.Pass;

    /// <summary>
    /// The lines for the operator: PASS; NOT OK when something failed; REPEAT when something could not be judged or
    /// nothing was; NOT OK and REPEAT when both are true.
    /// </summary>
    public ImmutableArray<string> ScreenLines => this switch
    {
        { Fail: > 0, Error: 0, Inconclusive: 0 } => ["NOT OK"],
        { Fail: > 0 } => ["NOT OK", "REPEAT"],
        { Releases: true } => ["PASS"],
        _ => ["REPEAT"],
    };

    /// <summary>The roll-up of counted verdicts, in any order.</summary>
    public static RollUp Of(IEnumerable<Verdict> counted) => counted.Aggregate(Empty, (sum, verdict) => sum.Plus(verdict));

    /// <summary>The same with one more counted verdict.</summary>
    public RollUp Plus(Verdict counted) => counted switch
    {
        Verdict.None => this with { None = None + 1 },
        Verdict.Pass => this with { Pass = Pass + 1 },
        Verdict.Inconclusive => this with { Inconclusive = Inconclusive + 1 },
        Verdict.Fail => this with { Fail = Fail + 1 },
        Verdict.Error => this with { Error = Error + 1 },
        _ => throw new ArgumentOutOfRangeException(nameof(counted), counted, "there are five verdicts"),
    };
}
