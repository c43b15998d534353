using EolSequencer.Language.Diagnostics;
using Microsoft.CodeAnalysis.CSharp.Syntax;

namespace EolSequencer.Language.Expressions.Compiling;

/// <summary>
/// Reads all expressions of a load. Results of computed steps get their shape from the compiler too, so expressions that
/// name such a result are read in a later round.
/// </summary>
internal sealed class DraftRounds
{
    private readonly Dictionary<string, ExpressionSyntax>? _parsed;
    private readonly Report _report;
    private readonly Draft?[] _drafts;
    private readonly IReadOnlyList<ExpressionText> _texts;

    /// <param name="parsed">Texts that have been parsed before; null: nobody keeps them.</param>
    public DraftRounds(IReadOnlyList<ExpressionText> texts, Report report, Dictionary<string, ExpressionSyntax>? parsed = null)
    {
        _parsed = parsed;
        _texts = texts;
        _report = report;
        _drafts = new Draft?[texts.Count];
    }

    /// <summary>What became of each expression, in the order they were added; null: it could not be read at all.</summary>
    public IReadOnlyList<Draft?> Drafts => _drafts;

    /// <summary>The shapes found out so far.</summary>
    public ComputedShapes Shapes { get; } = new();

    /// <summary>True when nothing has been reported about any of them.</summary>
    public bool AreSound => _drafts.All(draft => draft is { HasFailed: false });

    /// <summary>The expressions that can be read so far and have no fault.</summary>
    public IEnumerable<Draft> Good => _drafts.OfType<Draft>().Where(draft => !draft.HasFailed);

    /// <param name="settle">Settles the shape of every expression of <see cref="Good"/> that the compiler has to be asked about.</param>
    public void Run(Action settle)
    {
        foreach (var text in _texts) Shapes.Await(text.Expression);
        var waiting = Enumerable.Range(0, _texts.Count).ToList();
        do
        {
            var before = waiting.Count;
            waiting = [.. waiting.Where(number => !Draw(number))];
            if (waiting.Count == before)
            {
                foreach (var number in waiting) ReportCircle(_texts[number]);
                waiting.Clear();
            }

            settle();
        }
        while (waiting.Count > 0);
    }

    /// <summary>Reads one expression; false when it names a result whose shape is not known yet.</summary>
    private bool Draw(int number)
    {
        var draft = ExpressionParser.Parse(_texts[number], _report, _parsed);
        if (draft is not null && SyntaxGuard.Accept(draft)) DraftWriter.Write(draft, Shapes);
        if (draft is { HasFailed: false, IsPostponed: true }) return false;
        if (draft is null or { HasFailed: true } or { Shape: not null }) Shapes.Settle(_texts[number].Expression, draft?.Shape);
        _drafts[number] = draft;
        return true;
    }

    private void ReportCircle(ExpressionText text)
    {
        _report.Add(ExpressionCodes.Circular, text.Expression.Place, "the value depends on a result that depends on this value");
        Shapes.Settle(text.Expression, null);
    }
}
