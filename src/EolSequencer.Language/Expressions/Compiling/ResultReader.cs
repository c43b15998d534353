using System.Collections.Immutable;
using EolSequencer.Language.Diagnostics;
using EolSequencer.Model.Expressions;
using EolSequencer.Model.Judging;
using EolSequencer.Model.Sequences;
using EolSequencer.Model.Values;
using Microsoft.CodeAnalysis;
using Microsoft.CodeAnalysis.Text;

namespace EolSequencer.Language.Expressions.Compiling;

/// <summary>Follows <c>results.…</c> to a step and says whether it may be missing there.</summary>
internal sealed class ResultReader(Draft draft, IndexReader indexes)
{
    /// <summary>A step that a path has come to.</summary>
    /// <param name="Path">Its parts, from the level where it was found.</param>
    /// <param name="IsWhole">True when a step that reads every index is named without one: it has a verdict and no value.</param>
    /// <param name="Doubt">Why there may be no result; null when there certainly is one.</param>
    internal sealed record Step(ResultNode.Step Node, int Levels, ImmutableArray<ResultUse.Part> Path, bool IsWhole, Doubt? Doubt);

    /// <summary>Why a result may be missing.</summary>
    internal sealed record Doubt(DiagnosticCode Code, string Found);

    /// <summary>The words a verdict can be.</summary>
    public static ValueShape VerdictShape { get; } = ValueShape.OneOf(Enum.GetValues<Verdict>().Select(verdict => verdict.Word()));

    /// <summary>The step named, or null when a fault has been reported.</summary>
    public Step? Follow(PathSyntax path)
    {
        if (draft.Source.Names.Results is not { } scope)
        {
            draft.Fault(ExpressionCodes.UnknownName, path.Root.Span, "no result is known here", "only what is known before the run may be named");
            return null;
        }

        if (path.NextName is not { } first) return Incomplete(path, scope.Names());
        if (scope.Find(first.ValueText) is not { } found) return Unknown(first, scope.Names(), "is no step or group that can be named here");

        path.Take();
        var parts = ImmutableArray.CreateBuilder<ResultUse.Part>();
        var mayBeMissing = found.MayBeMissing;
        var name = first.ValueText;
        while (found.Step is null)
        {
            if (LoopValues(path, found, ref mayBeMissing) is not { } values) return null;
            parts.Add(new ResultUse.Part(name, values));
            if (path.NextName is not { } next) return Incomplete(path, found.Walked.Names);
            if (found.Child(next.ValueText) is not { } child) return Unknown(next, found.Walked.Names, $"is no step of '{name}'");
            mayBeMissing |= child.MayBeMissing;
            (found, name) = (child, next.ValueText);
            path.Take();
        }

        return End(path, found, name, parts, mayBeMissing);
    }

    /// <summary>A group whose capture a path has come to; the name of a device comes next.</summary>
    internal sealed record Captured(Capture Capture, ResultUse Use);

    /// <summary>The group whose trace is named, or null when a fault has been reported.</summary>
    public Captured? FollowToCapture(PathSyntax path)
    {
        if (draft.Source.Names.Results is not { } scope)
        {
            draft.Fault(ExpressionCodes.UnknownName, path.Root.Span, "no trace is known here", "only what is known before the run may be named");
            return null;
        }

        var parts = ImmutableArray.CreateBuilder<ResultUse.Part>();
        var (found, mayBeMissing, names) = ((ResultFound?)null, false, scope.Names());
        while (path.NextName is { } name)
        {
            if (found?.Walked.Capture is { } capture && capture.Channels.Any(one => one.Channel.Role == name.ValueText)) return Ended(path, found, capture, parts, mayBeMissing);
            if ((found is null ? scope.Find(name.ValueText) : found.Child(name.ValueText)) is not { Step: null } next)
            {
                var known = names.Concat(found?.Walked.Capture?.Channels.Select(one => one.Channel.Role) ?? []).Distinct().ToList();
                draft.Fault(ExpressionCodes.UnknownTrace, name.Span, $"'{name.ValueText}' is no group{(found is null ? "" : " and no captured device of it")} that can be named here",
                    Nearest.Of(name.ValueText, known) is { } near ? $"did you mean '{near}'?" : null);
                return null;
            }

            path.Take();
            mayBeMissing |= next.MayBeMissing;
            if (LoopValues(path, next, ref mayBeMissing) is not { } values) return null;
            parts.Add(new ResultUse.Part(name.ValueText, values));
            (found, names) = (next, next.Walked.Names);
        }

        draft.Fault(ExpressionCodes.NameIncomplete, path.TakenSpan, $"'{path.TakenText}' is no trace yet", "write  trace.GROUP.DEVICE.CHANNEL  and a feature");
        return null;
    }

    private Captured? Ended(PathSyntax path, ResultFound found, Capture capture, ImmutableArray<ResultUse.Part>.Builder parts, bool mayBeMissing)
    {
        if (found.Judged is null)
        {
            draft.Fault(ExpressionCodes.TraceNotEnded, path.TakenSpan, $"the group '{parts[^1].Name}' has not ended before this place");
            return null;
        }

        if (!mayBeMissing) return new Captured(capture, new ResultUse(found.Levels, parts.ToImmutable(), false));
        draft.Fault(ExpressionCodes.TraceMayBeMissing, path.TakenSpan, $"there is no trace of '{parts[^1].Name}' where the group does not apply or is not needed");
        return null;
    }

    private Step? End(PathSyntax path, ResultFound found, string name, ImmutableArray<ResultUse.Part>.Builder parts, bool mayBeMissing)
    {
        var step = found.Step!;
        var isWhole = !step.Indexes.IsEmpty && path.Next is not PathLink.Index;
        ImmutableArray<IndexUse> picked = [];
        if (!isWhole)
        {
            if (!indexes.TryOne(path, step.Indexes, $"step '{name}'", out var index)) return null;
            picked = index is null ? [] : [index];
        }

        parts.Add(new ResultUse.Part(name, picked));
        var doubt = found.Judged is null
            ? new Doubt(ExpressionCodes.NotJudgedBefore, $"step '{name}' is not judged before this place")
            : mayBeMissing ? new Doubt(ExpressionCodes.ResultMayBeMissing, $"step '{name}' has no result where it does not apply or is not needed")
            : null;
        return new Step(step, found.Levels, parts.ToImmutable(), isWhole, doubt);
    }

    /// <summary>The loop values in brackets behind a group; null when a fault has been reported.</summary>
    private ImmutableArray<IndexUse>? LoopValues(PathSyntax path, ResultFound group, ref bool mayBeMissing)
    {
        var loops = group.Loops;
        var link = path.Next as PathLink.Index;
        if (link is null && loops.IsEmpty) return [];
        if (link is null)
        {
            var example = string.Join(", ", loops.Select(loop => $"\"{loop.Values.FirstOrDefault()?.Value}\""));
            draft.Fault(ExpressionCodes.IndexNeeded, path.TakenSpan, $"the group runs once for each {string.Join(" and ", loops.Select(loop => loop.Name))}",
                $"write  {path.TakenText}[{example}]");
            return null;
        }

        if (link.Arguments.Count != loops.Length)
        {
            draft.Fault(loops.IsEmpty ? ExpressionCodes.IndexNotPossible : ExpressionCodes.UnknownIndex, IndexReader.BracketsOf(link),
                loops.IsEmpty ? "the group runs once and has no index" : $"the group has {loops.Length} loop names, not {link.Arguments.Count}");
            return null;
        }

        var values = ImmutableArray.CreateBuilder<IndexUse>();
        foreach (var (loop, argument) in loops.Zip(link.Arguments))
        {
            if (indexes.Read(argument.Expression, [.. loop.Values.Select(value => value.Value)], $"loop name '{loop.Name}'") is not { } value) return null;
            mayBeMissing |= IsConditional(loop, value);
            values.Add(value);
        }

        path.Take();
        return values.ToImmutable();
    }

    private bool IsConditional(LoopName loop, IndexUse picked)
    {
        IEnumerable<string> possible = picked switch
        {
            IndexUse.Fixed one => [one.Value],
            IndexUse.Named named => draft.Source.Names.Arguments[named.Name].Choices,
            _ => [],
        };
        return loop.Values.Any(value => value.When is not null && possible.Contains(value.Value));
    }

    private Step? Incomplete(PathSyntax path, IEnumerable<string> names)
    {
        draft.Fault(ExpressionCodes.NameIncomplete, path.TakenSpan, $"'{path.TakenText}' is no step yet", Choice(names));
        return null;
    }

    private Step? Unknown(SyntaxToken name, IEnumerable<string> names, string found)
    {
        var known = names.ToList();
        var advice = Nearest.Of(name.ValueText, known) is { } near ? $"did you mean '{near}'?" : Choice(known);
        draft.Fault(ExpressionCodes.UnknownResult, name.Span, $"'{name.ValueText}' {found}", advice);
        return null;
    }

    private static string? Choice(IEnumerable<string> names) =>
        names.Take(8).ToList() is { Count: > 0 } some ? $"there is {Shown.OneOf(some)}" : null;
}
