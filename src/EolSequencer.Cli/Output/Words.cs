using System.Globalization;
using EolSequencer.Model.Events;
using EolSequencer.Model.Judging;

namespace EolSequencer.Cli.Output;

/// <summary>How results read: a verdict is a sign and a word, never a colour alone.</summary>
internal static class Words
{
    public static string Sign(Verdict verdict) => verdict switch
    {
        Verdict.None => "·",
        Verdict.Pass => "✓",
        Verdict.Inconclusive => "?",
        Verdict.Fail => "✗",
        _ => "!",
    };

    public static string Of(Verdict verdict) => $"{Sign(verdict)} {verdict.Word()}";

    public static string Colour(Verdict verdict) => verdict switch
    {
        Verdict.None => "grey",
        Verdict.Pass => "green",
        Verdict.Inconclusive => "yellow",
        Verdict.Fail => "red",
        _ => "magenta",
    };

    public static string Seconds(TimeSpan time) => string.Create(CultureInfo.InvariantCulture, $"{time.TotalSeconds:0.0} s");

    public static string Count(long number, string one, string? many = null) =>
        string.Create(CultureInfo.InvariantCulture, $"{number} {(number == 1 ? one : many ?? one + "s")}");

    /// <summary>What was found against what was expected, with digits enough not to contradict the verdict.</summary>
    public static string Finding(Judged judged)
    {
        var parts = judged.Criteria.Where(criterion => criterion.Verdict == judged.Measured || judged.Criteria.Length == 1).Select(Finding);
        var cause = judged.Cause is { } missing ? missing.Word() : null;
        return string.Join("; ", parts.Append(cause).Append(judged.Detail).Where(part => !string.IsNullOrEmpty(part)));
    }

    /// <summary>The requirements that are not shown to be met, in brackets; nothing when none is named.</summary>
    public static string Requirements(Judged judged) => judged.Requirements.IsEmpty ? "" : $" ({string.Join(", ", judged.Requirements)})";

    private static string Finding(CriterionResult criterion)
    {
        var of = criterion.Of.Length == 0 ? "" : $"{criterion.Of}: ";
        if (criterion.Value is not { } value) return of.Length == 0 ? "" : of + "no value";
        var unit = criterion.Unit is null ? "" : " " + criterion.Unit;
        if (criterion.Expected is not { } expected) return $"{of}{value}{unit}";
        return CriterionWindow.Of(criterion) is { } number
            ? $"{of}{ShownValue.Of(number.Value, number.Window, number.Uncertainty ?? 0).Value} (wanted {expected}{Guard(criterion)})"
            : $"{of}{value}{unit} (wanted {expected})";
    }

    private static string Guard(CriterionResult criterion) =>
        criterion.IsGuarded ? $", guarded by {criterion.Uncertainty}{(criterion.Unit is null ? "" : " " + criterion.Unit)}" : "";
}
