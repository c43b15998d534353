using System.Collections.Immutable;
using System.Text;
using EolSequencer.Language.Diagnostics;
using EolSequencer.Model.Values;
using Microsoft.CodeAnalysis;
using Microsoft.CodeAnalysis.CSharp;
using Microsoft.CodeAnalysis.Emit;
using Microsoft.CodeAnalysis.Text;

namespace EolSequencer.Language.Expressions.Compiling;

/// <summary>
/// Compiles all expressions of a load in one emission. Results of computed steps get their shape from the compiler too, so
/// expressions that name such a result are read in a later round; only the last round is emitted.
/// </summary>
internal sealed class UnitCompiler
{
    private static readonly CSharpCompilationOptions CompilationOptions = new(
        OutputKind.DynamicallyLinkedLibrary,
        optimizationLevel: OptimizationLevel.Release,
        checkOverflow: true,
        deterministic: true,
        nullableContextOptions: NullableContextOptions.Annotations);

    private readonly Report _report;
    private readonly ComputedShapes _shapes = new();
    private readonly Draft?[] _drafts;
    private readonly IReadOnlyList<ExpressionText> _texts;

    private UnitCompiler(IReadOnlyList<ExpressionText> texts, Report report)
    {
        _texts = texts;
        _report = report;
        _drafts = new Draft?[texts.Count];
    }

    /// <summary>The compiled unit, or null when faults have been reported.</summary>
    public static CompiledUnit? Compile(IReadOnlyList<ExpressionText> texts, Report report) => new UnitCompiler(texts, report).Compile();

    private CompiledUnit? Compile()
    {
        foreach (var text in _texts) _shapes.Await(text.Expression);
        var waiting = Enumerable.Range(0, _texts.Count).ToList();
        while (true)
        {
            var before = waiting.Count;
            waiting = [.. waiting.Where(number => !Draw(number))];
            if (waiting.Count == before)
            {
                foreach (var number in waiting) ReportCircle(_texts[number]);
                waiting.Clear();
            }

            var round = new UnitRound(Good, CompilationOptions);
            round.Settle(_shapes);
            if (waiting.Count == 0) return Finish(round);
        }
    }

    private IEnumerable<Draft> Good => _drafts.OfType<Draft>().Where(draft => !draft.HasFailed);

    /// <summary>Reads one expression; false when it names a result whose shape is not known yet.</summary>
    private bool Draw(int number)
    {
        var draft = ExpressionParser.Parse(_texts[number], _report);
        if (draft is not null && SyntaxGuard.Accept(draft)) DraftWriter.Write(draft, _shapes);
        if (draft is { HasFailed: false, IsPostponed: true }) return false;
        if (draft is null or { HasFailed: true } or { Shape: not null }) _shapes.Settle(_texts[number].Expression, draft?.Shape);
        _drafts[number] = draft;
        return true;
    }

    private void ReportCircle(ExpressionText text)
    {
        _report.Add(ExpressionCodes.Circular, text.Expression.Place, "the value depends on a result that depends on this value");
        _shapes.Settle(text.Expression, null);
    }

    private CompiledUnit? Finish(UnitRound last)
    {
        using var code = new MemoryStream();
        using var symbols = new MemoryStream();
        var emitted = last.Emit(code, symbols);
        if (_drafts.Any(draft => draft is null or { HasFailed: true }) || !emitted) return null;

        var functions = last.Source.Functions.SelectMany(function => function.Drafts.Select(draft => (draft, function.Number)))
            .ToDictionary(pair => pair.draft, pair => pair.Number);
        return new CompiledUnit(code.ToArray(), symbols.ToArray(),
            [.. _drafts.Select(draft => new CompiledExpression(functions[draft!], draft!.Shape!, draft.Channels, draft.Results, draft.Traces, draft.IsInexact))]);
    }
}
