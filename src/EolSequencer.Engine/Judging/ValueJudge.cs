using System.Collections.Immutable;
using System.Globalization;
using System.Text.RegularExpressions;
using EolSequencer.Model.Events;
using EolSequencer.Model.Expressions;
using EolSequencer.Model.Judging;
using EolSequencer.Model.Sequences;
using EolSequencer.Model.Units;
using EolSequencer.Model.Values;

namespace EolSequencer.Engine.Judging;

/// <summary>Judges one value by one expectation. Numbers are compared exactly after conversion to one unit.</summary>
/// <param name="scope">For the parts in brackets; null where there are none.</param>
internal readonly struct ValueJudge(RunScope? scope, Decision decision, Operand? uncertainty, bool recordOnly)
{
    /// <summary>The criterion with its verdict.</summary>
    /// <param name="of">Which criterion: empty for the step's value, <c>takes</c>, or an index.</param>
    public CriterionResult Judge(string of, Value value, Expectation expect) => expect switch
    {
        Expectation.Within window => ByWindow(of, value, window),
        Expectation.EqualTo equal => By(of, value, Of(equal.Wanted) is var wanted && Same(value, wanted), $"equals {wanted}"),
        Expectation.OneOf one => ByOneOf(of, value, one),
        Expectation.Only only => By(of, value, Items(value).All(item => only.Allowed.Contains(item)), $"only [{string.Join(", ", only.Allowed)}]"),
        Expectation.Empty => By(of, value, value is TextValue { Text.Length: 0 } or ListValue { Items.IsEmpty: true }, "empty"),
        Expectation.Matches matches => By(of, value, value is TextValue text && Matches(text.Text, matches), $"matches /{matches.Pattern}/"),
        Expectation.Truth truth => By(of, value, value is TruthValue found && found.IsTrue == truth.Wanted, truth.Wanted ? "yes" : "no"),
        Expectation.ByIndex windows => Judge(of, value, windows.Windows[of]),
        _ => throw new InvalidOperationException($"the plan left {expect.GetType().Name} unresolved"),
    };

    private CriterionResult ByWindow(string of, Value value, Expectation.Within expect)
    {
        var low = EndOf(expect.Low, expect.Unit);
        var high = EndOf(expect.High, expect.Unit);
        if (low > high) throw new ExpressionFault($"the window ends at {high}, below its start at {low}");
        var window = new Window(low, high, expect.Unit);
        var number = NumberOf(value, expect.Unit);
        var guard = uncertainty is null ? (decimal?)null : WidthOf(uncertainty, expect.Unit);
        var isGuarded = decision == Decision.Guarded && guard is not null;
        var verdict = isGuarded ? GuardedDecision.Judge(number, window, guard!.Value) : window.Judge(number);
        return new CriterionResult(
            of, NumberText.Of(number), expect.Unit?.Symbol, window.Describe(), Text(low), Text(high), Text(guard), verdict, recordOnly)
        {
            IsGuarded = isGuarded,
        };
    }

    private CriterionResult ByOneOf(string of, Value value, Expectation.OneOf expect)
    {
        var wanted = new List<Value>(expect.Wanted.Length);
        foreach (var operand in expect.Wanted) wanted.Add(Of(operand));
        return By(of, value, wanted.Exists(one => Same(value, one)), $"one of [{string.Join(", ", wanted)}]");
    }

    private CriterionResult By(string of, Value value, bool good, string expected)
    {
        var (text, unit) = Parts(value);
        return new CriterionResult(of, text, unit, expected, null, null, null, good ? Verdict.Pass : Verdict.Fail, recordOnly) { IsText = value is not NumberValue };
    }

    /// <summary>A value that is only recorded.</summary>
    public static CriterionResult Unjudged(string of, Value value)
    {
        var (text, unit) = Parts(value);
        return new CriterionResult(of, text, unit, null, null, null, null, Verdict.None, false) { IsText = value is not NumberValue };
    }

    /// <summary>A criterion whose value is missing.</summary>
    public static CriterionResult Missing(string of, Verdict verdict, bool recordOnly) =>
        new(of, null, null, null, null, null, null, verdict, recordOnly);

    private static (string Text, string? Unit) Parts(Value value) => value is NumberValue number
        ? (NumberText.Of(number.Number), number.Unit?.Symbol)
        : (value.ToString()!, null);

    private Value Of(Operand operand) => Operands.Value(operand, scope);

    private decimal? EndOf(Operand? end, Unit? unit) => end is null ? null : NumberOf(Of(end), unit);

    private decimal WidthOf(Operand operand, Unit? unit) =>
        Of(operand) is NumberValue { Unit: { } own } width && unit is not null ? own.ConvertWidth(width.Number, unit) : NumberOf(Of(operand), unit);

    private static decimal NumberOf(Value value, Unit? unit)
    {
        if (value is not NumberValue number) throw new ExpressionFault($"{value} is no number");
        return number.TryIn(unit, out var converted) ? converted : throw new ExpressionFault($"{value} is too large in {unit}");
    }

    private static bool Matches(string text, Expectation.Matches expect)
    {
        try
        {
            return expect.Regex.IsMatch(text);
        }
        catch (RegexMatchTimeoutException slow)
        {
            throw new ExpressionFault(
                string.Create(CultureInfo.InvariantCulture, $"whether '{text}' matches /{expect.Pattern}/ was not found out within {slow.MatchTimeout.TotalMilliseconds:0} ms; write the regular expression so that it repeats nothing within a repetition"),
                slow);
        }
    }

    private static bool Same(Value value, Value wanted) => (value, wanted) switch
    {
        (NumberValue { Inexact: true }, NumberValue) or (NumberValue, NumberValue { Inexact: true }) =>
            throw new ExpressionFault($"{value} and {wanted} are not compared exactly: one of them came through floating point and its last digits mean nothing; write a window"),
        (NumberValue found, NumberValue other) => other.TryIn(found.Unit, out var number) && found.Number == number,
        _ => value.Equals(wanted),
    };

    private static ImmutableArray<string> Items(Value value) => value is ListValue list ? list.Items : [value.ToString()!];

    private static string? Text(decimal? number) => number is { } some ? NumberText.Of(some) : null;
}
