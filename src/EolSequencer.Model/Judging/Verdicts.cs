namespace EolSequencer.Model.Judging;

/// <summary>Order and words of verdicts.</summary>
public static class Verdicts
{
    private static readonly Verdict[] All = Enum.GetValues<Verdict>();

    /// <summary>The worse of two.</summary>
    public static Verdict Worst(Verdict first, Verdict second) => first > second ? first : second;

    /// <summary>The worst of many; <see cref="Verdict.None"/> of nothing.</summary>
    public static Verdict Worst(IEnumerable<Verdict> verdicts) => verdicts.Aggregate(Verdict.None, Worst);

    /// <summary>The word that records, reports and expressions use: <c>none</c>, <c>pass</c>, <c>inconclusive</c>, <c>fail</c>, <c>error</c>.</summary>
    public static string Word(this Verdict verdict) => verdict switch
    {
        Verdict.None => "none",
        Verdict.Pass => "pass",
        Verdict.Inconclusive => "inconclusive",
        Verdict.Fail => "fail",
        Verdict.Error => "error",
        _ => throw new ArgumentOutOfRangeException(nameof(verdict), verdict, "there are five verdicts"),
    };

    /// <summary>The verdict of a word; false for any other text, numbers included.</summary>
    public static bool TryParse(string word, out Verdict verdict)
    {
        foreach (var candidate in All)
        {
            if (candidate.Word() != word) continue;
            verdict = candidate;
            return true;
        }

        verdict = Verdict.None;
        return false;
    }
}
