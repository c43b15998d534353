using System.Collections.Immutable;
using EolSequencer.Language.Diagnostics;
using EolSequencer.Model.Expressions;
using EolSequencer.Model.Units;
using EolSequencer.Model.Values;
using Microsoft.CodeAnalysis;
using Microsoft.CodeAnalysis.CSharp.Syntax;
using Microsoft.CodeAnalysis.Text;

namespace EolSequencer.Language.Expressions.Compiling;

/// <summary>One expression on its way from the author's text to a function of the unit.</summary>
internal sealed class Draft(ExpressionText source, ExpressionSyntax syntax, Report report)
{
    private readonly List<ChannelUse> _channels = [];
    private readonly List<ResultUse> _results = [];
    private readonly List<TraceUse> _traces = [];
    private readonly Dictionary<Dimension, Unit> _quantities = [];
    private readonly Dictionary<SyntaxNode, ValueShape> _reads = [];
    private readonly List<Objection> _objections = [];
    private bool _asksForTypes;

    public ExpressionText Source => source;

    /// <summary>The author's text alone, parsed.</summary>
    public ExpressionSyntax Syntax => syntax;

    /// <summary>Remarks behind the expression are left out: an open one would reach into what is written next.</summary>
    public TextEdits Edits { get; } = new(source.Text, syntax.Span.End);

    /// <summary>A fault has been reported: nothing comes of it.</summary>
    public bool HasFailed { get; private set; }

    /// <summary>The faults that have been reported.</summary>
    public IReadOnlyList<Objection> Objections => _objections;

    /// <summary>It names a result whose shape is not known yet: it is read again later.</summary>
    public bool IsPostponed { get; private set; }

    /// <summary>True when the value always comes through binary floating point.</summary>
    public bool IsInexact { get; set; }

    /// <summary>The author's text with names turned into reads of the scope.</summary>
    public string Written { get; private set; } = "";

    /// <summary>The shape of the value, once the compiler has said of what type the expression is.</summary>
    public ValueShape? Shape { get; private set; }

    public ImmutableArray<ChannelUse> Channels => [.. _channels];

    public ImmutableArray<ResultUse> Results => [.. _results];

    public ImmutableArray<TraceUse> Traces => [.. _traces];

    /// <summary>A trace has been read: names behind it are features.</summary>
    public bool NamesTrace { get; set; }

    /// <summary>True when its place wants yes or no.</summary>
    public bool IsCondition { get; } = source.Wanted is Wanted.One { Shape.Kind: ValueKind.Truth };

    /// <summary>Whether the value says if it is exact: conditions do not.</summary>
    public bool NotesInexact => !IsCondition;

    /// <summary>The type of the value as far as the text says; null: only the compiler can say.</summary>
    public AuthorType? Type { get; private set; }

    /// <summary>
    /// True when the compiler has to be asked for types: what the value is, or what the author reaches for. Otherwise all is
    /// well if the code compiles.
    /// </summary>
    public bool NeedsTypes => _asksForTypes || (Type is null && !IsCondition);

    /// <summary>The units in which a quantity is handed over, one for each dimension it can have.</summary>
    public ImmutableArray<Unit> Units => source.Wanted is Wanted.One { Shape.Unit: { } unit } ? [unit] : [.. _quantities.Values];

    /// <summary>What is the same for all expressions that can share a function.</summary>
    public string Body => $"{IsCondition} {IsInexact} {CodeText.Field(Units)} {Written}";

    /// <summary>The dimensions of the quantities that are used as such.</summary>
    public IEnumerable<Dimension> Dimensions => _quantities.Keys;

    /// <summary>The units in which numbers are taken by name.</summary>
    public HashSet<Unit> TakenUnits { get; } = [];

    public int SlotOf(ChannelUse use) => SlotOf(_channels, use, static (one, other) => one == other);

    public int SlotOf(ResultUse use) => SlotOf(_results, use, Same);

    public int SlotOf(TraceUse use) => SlotOf(_traces, use, static (one, other) => one.Channel == other.Channel && Same(one.Group, other.Group));

    /// <summary>A quantity is used as such; the first one of a dimension gives the unit of the value.</summary>
    public void UseQuantity(Unit unit) => _quantities.TryAdd(unit.Dimension, unit);

    /// <summary>A read of the scope stands for this node.</summary>
    public void Note(SyntaxNode node, ValueShape shape) => _reads[node] = shape;

    /// <summary>What a node reads when it is nothing but a read.</summary>
    public ValueShape? ReadAt(SyntaxNode node) => _reads.GetValueOrDefault(node);

    /// <summary>Reports a fault at some of the author's characters.</summary>
    public void Fault(DiagnosticCode code, TextSpan span, string found, string? hint = null)
    {
        HasFailed = true;
        _objections.Add(new Objection(code, span, found, hint));
        report.Add(code, source.PlaceOf(span.Start, span.Length), found, hint);
    }

    /// <summary>Nothing comes of it because of a fault that was reported elsewhere.</summary>
    public void Abandon() => HasFailed = true;

    /// <summary>The author names a member of a value, or picks from one with brackets.</summary>
    public void AskForTypes() => _asksForTypes = true;

    public void Postpone() => IsPostponed = true;

    public void Finish(AuthorType? type)
    {
        Type = type;
        Written = Edits.Apply();
    }

    public void Settle(ValueShape shape) => Shape = shape;

    private static int SlotOf<T>(List<T> uses, T use, Func<T, T, bool> same)
    {
        var slot = uses.FindIndex(known => same(known, use));
        if (slot >= 0) return slot;
        uses.Add(use);
        return uses.Count - 1;
    }

    // Records that hold arrays compare them by reference.
    private static bool Same(ResultUse one, ResultUse other) =>
        one.Levels == other.Levels && one.Optional == other.Optional
        && one.Path.Length == other.Path.Length
        && one.Path.Zip(other.Path).All(pair => pair.First.Name == pair.Second.Name && pair.First.Indexes.SequenceEqual(pair.Second.Indexes));
}
