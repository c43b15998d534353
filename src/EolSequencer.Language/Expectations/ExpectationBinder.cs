using System.Collections.Immutable;
using EolSequencer.Language.Diagnostics;
using EolSequencer.Model.Sequences;
using EolSequencer.Model.Values;

namespace EolSequencer.Language.Expectations;

/// <summary>Checks an expectation against what it judges. Null always means: already reported.</summary>
internal sealed class ExpectationBinder(JudgedValue judged, IExpectationNames names, Report report)
{
    private readonly OperandBinder _operands = new(judged, names, report);

    public Expectation? Bind(ExpectationSyntax syntax) => syntax switch
    {
        ExpectationSyntax.Limit limit => names.Limit(limit, judged),
        ExpectationSyntax.Window window => Bind(window),
        ExpectationSyntax.EqualTo equal => Bind(equal),
        ExpectationSyntax.OneOf one => Bind(one),
        ExpectationSyntax.Only only => Fits(only, "only [..]", ValueKind.List) ? Bind(only) : null,
        ExpectationSyntax.Empty => Fits(syntax, "empty", ValueKind.List, ValueKind.Text) ? new Expectation.Empty() : null,
        ExpectationSyntax.Matches matches => Fits(matches, "matches /…/", ValueKind.Text) ? new Expectation.Matches(matches.Pattern, matches.Regex) : null,
        ExpectationSyntax.Truth truth => Fits(truth, truth.Wanted ? "yes" : "no", ValueKind.Truth) ? new Expectation.Truth(truth.Wanted) : null,
        _ => throw new InvalidOperationException($"nobody binds {syntax.GetType().Name}"),
    };

    private Expectation.Within? Bind(ExpectationSyntax.Window window)
    {
        if (!Fits(window, "a window", ValueKind.Number, ValueKind.Time)) return null;

        var hasNumber = window.Low is OperandSyntax.Number || window.High is OperandSyntax.Number;
        if (hasNumber && !UnitCheck.Fits(window.Unit, window.Part, judged, report)) return null;

        var unit = window.Unit ?? judged.Shape.Unit;
        var (low, high) = (_operands.End(window.Low, unit), _operands.End(window.High, unit));
        return (low is null) == (window.Low is null) && (high is null) == (window.High is null) ? new Expectation.Within(low, high, unit) : null;
    }

    private Expectation? Bind(ExpectationSyntax.EqualTo equal)
    {
        if (judged.Shape.Kind == ValueKind.List) return Refuse(equal, "equals", "write  only [..]  or  empty");
        if (judged.Shape.Kind == ValueKind.Truth && equal.Wanted is OperandSyntax.Written) return Refuse(equal, "equals", "write  yes  or  no");
        return IsExact(equal.Part) && _operands.Value(equal.Wanted) is { } wanted ? new Expectation.EqualTo(wanted) : null;
    }

    private Expectation? Bind(ExpectationSyntax.OneOf one)
    {
        if (!Fits(one, "one of [..]", ValueKind.Number, ValueKind.Time, ValueKind.Text) || !IsExact(one.Part)) return null;
        if (one.Wanted.IsEmpty)
        {
            report.Add(ExpectationCodes.BadList, one.Part.Place, "one of nothing can never be");
            return null;
        }

        var wanted = one.Wanted.Select(_operands.Value).OfType<Operand>().ToImmutableArray();
        return wanted.Length == one.Wanted.Length ? new Expectation.OneOf(wanted) : null;
    }

    private Expectation.Only? Bind(ExpectationSyntax.Only only)
    {
        if (only.Allowed.OfType<OperandSyntax.Code>().FirstOrDefault() is { } code)
        {
            report.Add(ExpectationCodes.BadList, code.Part.Place, "a C# value stands in a list of texts", "write the text itself");
            return null;
        }

        if (!only.Allowed.IsEmpty) return new Expectation.Only([.. only.Allowed.Cast<OperandSyntax.Written>().Select(item => item.Text)]);

        report.Add(ExpectationCodes.BadList, only.Part.Place, "a list that may hold nothing is written shorter", "write  empty");
        return null;
    }

    private bool IsExact(ScalarPart part)
    {
        if (judged.MayBeInexact) report.Add(ExpectationCodes.Inexact, part.Place, $"{judged.Name} comes through floating point, its last digits mean nothing");
        return !judged.MayBeInexact;
    }

    private bool Fits(ExpectationSyntax syntax, string form, params ReadOnlySpan<ValueKind> kinds)
    {
        if (kinds.Contains(judged.Shape.Kind)) return true;
        Refuse(syntax, form, FormsFor(judged.Shape.Kind));
        return false;
    }

    private Expectation? Refuse(ExpectationSyntax syntax, string form, string hint)
    {
        report.Add(ExpectationCodes.WrongKind, syntax.Part.Place, $"'{form}' cannot judge {judged.Name} ({judged.Shape})", hint);
        return null;
    }

    private static string FormsFor(ValueKind kind) => kind switch
    {
        ValueKind.Text => "write  equals …,  one of [..],  matches /…/  or  empty",
        ValueKind.Truth => "write  yes  or  no",
        ValueKind.List => "write  empty  or  only [..]",
        _ => "write a window such as  a .. b UNIT,  or  equals …,  or  one of [..]",
    };
}
