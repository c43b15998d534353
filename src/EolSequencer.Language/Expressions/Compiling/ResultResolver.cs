using EolSequencer.Language.Diagnostics;
using EolSequencer.Model.Expressions;
using EolSequencer.Model.Values;

namespace EolSequencer.Language.Expressions.Compiling;

/// <summary>Writes reads of results: value, verdict or time taken, each with or without <c>.or(…)</c>.</summary>
internal sealed class ResultResolver(Draft draft, ResultReader reader, ScopeRead reads, ComputedShapes shapes)
{
    private int _variables;

    public void Resolve(PathSyntax path)
    {
        if (reader.Follow(path) is not { } step) return;
        var what = $"'{path.TakenText}'";
        var variable = $"r{_variables++}";
        var (view, has) = path.NextName?.ValueText switch
        {
            "verdict" => (Verdict(path, variable), $"is {{ }} {variable}"),
            "took" => (Took(path, variable, what), $"is {{ }} {variable}"),
            _ => (Value(path, variable, step, what), null),
        };
        if (view is not { } read) return;

        var call = TakeOr(path);
        if (draft.HasFailed) return;
        if (call is null && step.Doubt is { } doubt)
        {
            draft.Fault(doubt.Code, path.TakenSpan, doubt.Found, $"say what holds then:  {path.TakenText}.or(…)");
            return;
        }

        var slot = draft.SlotOf(new ResultUse(step.Levels, step.Path, call is not null));
        var result = $"{CodeText.Scope}.Result({slot})";
        var test = has is null ? $"HasValue({result}, out var {variable})" : $"{result} {has}";
        Write(path, call, $"({test} ? {read.Code} : ", read.Shape, what);
    }

    private (string Code, ValueShape Shape)? Verdict(PathSyntax path, string variable)
    {
        path.Take();
        return ($"Word({variable}.Verdict)", ResultReader.VerdictShape);
    }

    private (string Code, ValueShape Shape)? Took(PathSyntax path, string variable, string what)
    {
        path.Take();
        return reads.Convert(path, $"Took({variable})", ValueShape.Time, $"the time of {what}");
    }

    private (string Code, ValueShape Shape)? Value(PathSyntax path, string variable, ResultReader.Step step, string what)
    {
        if (step.IsWhole)
        {
            var index = step.Node.Indexes[0];
            draft.Fault(ExpressionCodes.IndexNeeded, path.TakenSpan, $"the step reads one value for each of {Shown.OneOf(step.Node.Indexes)}",
                $"write  {path.TakenText}[\"{index}\"]");
            return null;
        }

        if (step.Node.Computed is { } computed && shapes.IsPending(computed))
        {
            draft.Postpone();
            return null;
        }

        var shape = step.Node.Computed is { } known ? shapes.Of(known) : step.Node.Shape;
        if (shape is not null) return reads.Convert(path, variable, shape, what);
        if (step.Node.Computed is not null) draft.Abandon();
        else draft.Fault(ExpressionCodes.NoValue, path.TakenSpan, $"{what} is a step that finds no value");
        return null;
    }

    /// <summary>The call of <c>.or(…)</c> that follows, taken; null when none does.</summary>
    private PathLink.Call? TakeOr(PathSyntax path)
    {
        if (path.NextName is not { ValueText: "or" } name) return null;
        path.Take();
        if (path.Next is PathLink.Call { Arguments.Arguments.Count: 1 } call)
        {
            path.Take();
            return call;
        }

        draft.Fault(ExpressionCodes.NameIncomplete, name.Span, "'or' is given the value that holds when there is no result", "write  .or(0)");
        return null;
    }

    private void Write(PathSyntax path, PathLink.Call? call, string head, ValueShape shape, string what)
    {
        var (start, end) = (path.TakenSpan.Start, path.TakenSpan.End);
        if (call is null)
        {
            draft.Note(path.Taken, shape);
            draft.Edits.Replace(start, end, $"{head}throw Missing({CodeText.Literal(what)}))");
            return;
        }

        draft.Note(path.Taken, shape with { Choices = [], MaxLength = null });

        // What stands in the brackets stays the author's and is evaluated only when it is needed.
        var (open, close) = (call.Arguments.OpenParenToken.Span, call.Arguments.CloseParenToken.Span);
        draft.Edits.Replace(start, open.End, head + "(", start, end);
        draft.Edits.Replace(close.Start, close.End, "))", start, end);
    }
}
