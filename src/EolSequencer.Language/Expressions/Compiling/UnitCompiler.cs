using EolSequencer.Language.Diagnostics;

namespace EolSequencer.Language.Expressions.Compiling;

/// <summary>Compiles all expressions of a load in one emission, that of the last round.</summary>
internal static class UnitCompiler
{
    /// <summary>The compiled unit, or null when faults have been reported.</summary>
    public static CompiledUnit? Compile(IReadOnlyList<ExpressionText> texts, Report report)
    {
        var rounds = new DraftRounds(texts, report);
        UnitRound? last = null;
        rounds.Run(() =>
        {
            last = new UnitRound(rounds.Good);
            last.Settle(rounds.Shapes);
        });
        return last is null ? null : Finish(rounds, last);
    }

    private static CompiledUnit? Finish(DraftRounds rounds, UnitRound last)
    {
        using var code = new MemoryStream();
        using var symbols = new MemoryStream();
        var emitted = last.Emit(code, symbols);
        if (!rounds.AreSound || !emitted) return null;

        var functions = last.Source.NumberByDraft();
        return new CompiledUnit(code.ToArray(), symbols.ToArray(),
            [.. rounds.Drafts.Select(draft => new CompiledExpression(functions[draft!], draft!.Shape!, draft.Channels, draft.Results, draft.Traces, draft.IsInexact))]);
    }
}
