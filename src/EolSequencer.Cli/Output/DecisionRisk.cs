using System.Globalization;
using EolSequencer.Model.Events;
using EolSequencer.Model.Judging;
using EolSequencer.Statistics.Conformity;

namespace EolSequencer.Cli.Output;

/// <summary>How likely a decision about a measured value is wrong, for steps whose uncertainty is stated.</summary>
/// <param name="Of">Full id of the step, with the criterion behind it when it is not the step's value.</param>
/// <param name="Criterion">What was judged.</param>
/// <param name="Risk">What accepting or rejecting it risks.</param>
internal sealed record DecisionRisk(string Of, CriterionResult Criterion, SpecificRisk Risk)
{
    /// <summary>What a run alone can tell, and what it takes for granted.</summary>
    public const string Assumed =
        "assumed: U is two standard uncertainties of a normal distribution, and nothing is known of the process these vehicles come from (JCGM 106)";

    /// <summary>The decisions of a step that are known to risk something.</summary>
    public static IEnumerable<DecisionRisk> In(Judged judged)
    {
        foreach (var criterion in judged.Criteria)
        {
            if (For(criterion) is not { } risk) continue;
            yield return new DecisionRisk(criterion.Of.Length == 0 ? judged.Step : $"{judged.Step}[{criterion.Of}]", criterion, risk);
        }
    }

    /// <summary>The risk of one decision; null when no uncertainty was stated.</summary>
    public static SpecificRisk? For(CriterionResult criterion) =>
        CriterionWindow.Of(criterion) is { Uncertainty: { } uncertainty } number ? SpecificRisk.Of(number.Value, number.Window, uncertainty) : null;

    /// <summary>For people: <c>false acceptance 2.3 %</c>.</summary>
    public override string ToString() => Criterion.Verdict switch
    {
        Verdict.Pass => $"false acceptance {Percent(Risk.OfAccepting)}",
        Verdict.Fail => $"false rejection {Percent(Risk.OfRejecting)}",
        _ => $"conforms with {Percent(Risk.Conforming)}",
    };

    private static string Percent(double share) =>
        share < 0.00005 ? "below 0.01 %" : string.Create(CultureInfo.InvariantCulture, $"{100 * share:0.##} %");
}
