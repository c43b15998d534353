using System.Collections.Immutable;
using EolSequencer.Model.Expressions;
using EolSequencer.Model.Sequences;
using EolSequencer.Model.Values;

namespace EolSequencer.Language.Expressions;

/// <summary>
/// The results that have been judged before one place of a sequence. Whoever walks a sequence begins with
/// <see cref="Start"/>, hands the scope in force to every expression and goes on with what <see cref="Add(string,
/// ValueShape, ImmutableArray{string}, bool)"/>, <see cref="Enter"/>, <see cref="Leave"/> and <see cref="Join"/> return.
/// </summary>
/// <remarks>
/// A scope never changes. All scopes of one walk share a list of every step met, so that an expression which names a
/// later step, or one of another branch, is told so and may ask for it with <c>.or(…)</c>.
/// </remarks>
internal sealed class ResultScope
{
    private readonly Level _level;

    private ResultScope(Level level, ResultHistory history)
    {
        _level = level;
        History = history;
    }

    /// <summary>How this scope came about; the same history gives the same scope.</summary>
    internal ResultHistory History { get; }

    /// <summary>Nothing has been judged yet.</summary>
    public static ResultScope Start() =>
        new(new Level(null, "", true, NothingDone, new WalkedNode([])), ResultHistory.Begin());

    /// <summary>A step has been judged.</summary>
    /// <param name="step">Its own part of the id.</param>
    /// <param name="shape">What its value is; null when it finds none.</param>
    /// <param name="indexes">The index values of a channel that is read as a whole; otherwise empty.</param>
    /// <param name="mayBeMissing">True: it does not apply to every vehicle, or is decided at its turn.</param>
    public ResultScope Add(string step, ValueShape? shape, ImmutableArray<string> indexes, bool mayBeMissing) =>
        Add(step, new ResultNode.Step(shape, null, indexes, mayBeMissing));

    /// <summary>A step has computed its value; the shape is that of the expression, compiled or in the same batch.</summary>
    public ResultScope Add(string step, Expression computed, bool mayBeMissing) =>
        Add(step, new ResultNode.Step(null, computed, [], mayBeMissing));

    /// <summary>The place inside a group, before its first child.</summary>
    /// <param name="loops">Its loop names, outermost first; a value with a condition may be missing from outside.</param>
    /// <param name="isFragment">True: nothing around the group may be named inside.</param>
    /// <param name="capture">What is kept as a trace while it runs; null: nothing.</param>
    public ResultScope Enter(string group, ImmutableArray<LoopName> loops, bool isFragment, Capture? capture = null) => new(
        new Level(_level, group, isFragment, NothingDone, _level.Walk.Enter(group, loops, capture)),
        History.Then(new ResultChange.Entered(group, loops, isFragment, capture)));

    /// <summary>The place behind the group entered last.</summary>
    /// <param name="mayBeMissing">True: the group does not apply to every vehicle, or is decided at its turn.</param>
    public ResultScope Leave(bool mayBeMissing)
    {
        var outer = _level.Outer ?? throw new InvalidOperationException("there is no group to leave");
        var group = new ResultNode.Group(_level.Done, mayBeMissing);
        return new ResultScope(outer.With(_level.Group, group), History.Then(new ResultChange.Left(mayBeMissing)));
    }

    /// <summary>The place behind branches that ran side by side, each of which began with this scope.</summary>
    public ResultScope Join(params IEnumerable<ResultScope> branches)
    {
        var (level, history) = (_level, History);
        foreach (var branch in branches)
        {
            foreach (var (name, node) in branch._level.Done) level = level.With(name, node);
            history = history.Then(new ResultChange.Joined(branch.History));
        }

        return new ResultScope(level, history);
    }

    /// <summary>What a first name behind <c>results</c> means here: a sibling, one around, or one at the top.</summary>
    internal ResultFound? Find(string name)
    {
        for (var level = _level; level is not null; level = level.IsClosed ? null : level.Outer)
        {
            if (level.Walk.Find(name) is not { } walked) continue;
            var judged = level.Done.GetValueOrDefault(name);
            return new ResultFound(judged, walked, level.Depth, judged is { MayBeMissing: true });
        }

        return null;
    }

    /// <summary>Every name that <see cref="Find"/> knows, for advice.</summary>
    internal IEnumerable<string> Names()
    {
        for (var level = _level; level is not null; level = level.IsClosed ? null : level.Outer)
        {
            foreach (var name in level.Walk.Names) yield return name;
        }
    }

    private ResultScope Add(string step, ResultNode.Step node)
    {
        _level.Walk.Note(step, node);
        return new ResultScope(_level.With(step, node), History.Then(new ResultChange.Added(step, node)));
    }

    private static ImmutableDictionary<string, ResultNode> NothingDone { get; } =
        ImmutableDictionary.Create<string, ResultNode>(StringComparer.Ordinal);

    /// <summary>One group around the place, or the top of the sequence.</summary>
    private sealed record Level(
        Level? Outer, string Group, bool IsClosed, ImmutableDictionary<string, ResultNode> Done, WalkedNode Walk)
    {
        public int Depth => Outer is null ? 0 : Outer.Depth + 1;

        public Level With(string name, ResultNode node) => this with { Done = Done.SetItem(name, node) };
    }
}
