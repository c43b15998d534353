using EolSequencer.Language.Diagnostics;
using EolSequencer.Language.Expressions.Compiling;
using EolSequencer.Model.Expressions;
using EolSequencer.Model.Values;
using Microsoft.CodeAnalysis.CSharp.Syntax;

namespace EolSequencer.Language.Expressions;

/// <summary>
/// What the compiler said of each expression of one file, kept while the file is being written: a change asks it about the
/// expressions that are new. What the last check had no use for is dropped.
/// </summary>
internal sealed class LiveCode
{
    private Dictionary<Key, Known> _now = [];
    private Dictionary<Key, Known> _before = [];
    private readonly Dictionary<string, ExpressionSyntax> _parsed = new(StringComparer.Ordinal);

    /// <summary>How many expressions are kept.</summary>
    public int Count => _now.Count + _before.Keys.Count(key => !_now.ContainsKey(key));

    // Everything that decides what the compiler says and what its words become at the author's characters.
    private sealed record Key(string Text, string Body, Wanted Wanted, AuthorType? Type, bool NeedsTypes);

    private sealed record Known(ValueShape? Shape, IReadOnlyList<Objection> Objections, Func<ExpressionScope, Value>? Function);

    /// <summary>A check is over: what it had no use for is dropped.</summary>
    public void EndCheck()
    {
        foreach (var text in _parsed.Keys.Except(_now.Keys.Select(key => key.Text)).ToList()) _parsed.Remove(text);
        _before = _now;
        _now = [];
    }

    /// <summary>Completes every expression, or reports why that is not possible and returns false.</summary>
    public bool Compile(IReadOnlyList<ExpressionText> texts, Report report)
    {
        var rounds = new DraftRounds(texts, report, _parsed);
        var settled = new HashSet<Draft>();
        rounds.Run(() =>
        {
            var fresh = rounds.Good.Where(settled.Add).Where(draft => !Recall(draft, rounds.Shapes)).ToList();
            if (fresh.Count > 0) Learn(fresh, rounds.Shapes);
        });
        if (!rounds.AreSound) return false;

        foreach (var draft in rounds.Drafts)
        {
            var function = _now[KeyOf(draft!)].Function!;
            draft!.Source.Expression.Complete(new Expression.Compiled(draft.Shape!, draft.Channels, draft.Results, function, draft.IsInexact) { Traces = draft.Traces });
        }

        return true;
    }

    private static Key KeyOf(Draft draft) => new(draft.Source.Text, draft.Body, draft.Source.Wanted, draft.Type, draft.NeedsTypes);

    /// <summary>Gives a draft what is known of an equal one; false when nothing is.</summary>
    private bool Recall(Draft draft, ComputedShapes shapes)
    {
        var key = KeyOf(draft);
        if (!_now.TryGetValue(key, out var known))
        {
            if (!_before.TryGetValue(key, out known)) return false;
            _now.Add(key, known);
        }

        foreach (var one in known.Objections) draft.Fault(one.Code, one.At!.Value, one.Found, one.Hint);
        Settle(draft, known.Shape, shapes);
        return true;
    }

    private void Learn(List<Draft> fresh, ComputedShapes shapes)
    {
        var round = new UnitRound(fresh);
        round.Settle(shapes);
        var functions = Emit(round);

        // One with a fault keeps the others from being emitted; the compiler does not tell all faults at once.
        while (functions is null && fresh.Where(draft => !draft.HasFailed).ToList() is { Count: > 0 } sound) functions = Emit(new UnitRound(sound));
        foreach (var draft in fresh)
        {
            _now[KeyOf(draft)] = new Known(draft.Shape, draft.Objections, functions?.GetValueOrDefault(draft));
            Settle(draft, draft.Shape, shapes);
        }
    }

    private static void Settle(Draft draft, ValueShape? shape, ComputedShapes shapes)
    {
        if (shape is not null) draft.Settle(shape);
        if (shapes.IsPending(draft.Source.Expression)) shapes.Settle(draft.Source.Expression, draft.HasFailed ? null : shape);
    }

    /// <summary>The functions of a round; null when the compiler objects, which has then been reported.</summary>
    private static Dictionary<Draft, Func<ExpressionScope, Value>>? Emit(UnitRound round)
    {
        using var code = new MemoryStream();
        using var symbols = new MemoryStream();
        if (!round.Emit(code, symbols)) return null;
        var loaded = UnitLoader.Load(new CompiledUnit(code.ToArray(), symbols.ToArray(), []));
        return round.Source.NumberByDraft().ToDictionary(pair => pair.Key, pair => loaded[pair.Value]);
    }
}
