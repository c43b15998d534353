using EolSequencer.Language.Diagnostics;
using EolSequencer.Language.Expressions;
using EolSequencer.Model.Expressions;
using EolSequencer.Model.Values;

namespace EolSequencer.Language.Tests.Expressions.Kit;

/// <summary>Compiles what an author wrote in a document of its own.</summary>
internal static class Author
{
    /// <summary>An expression without a fault.</summary>
    public static Expression Writes(string text, Wanted? wanted = null, ExpressionNames? names = null)
    {
        var (expression, report) = Compile(text, wanted, names);
        Assert.Equal([], report.InOrder.Select(finding => finding.ToString()));
        return expression;
    }

    /// <summary>The value that an expression without a fault gives.</summary>
    public static Value Value(string text, FixedScope scope, Wanted? wanted = null, ExpressionNames? names = null) =>
        scope.Evaluate(Writes(text, wanted, names));

    /// <summary>The only finding.</summary>
    public static Diagnostic Fault(string text, Wanted? wanted = null, ExpressionNames? names = null) =>
        Assert.Single(Compile(text, wanted, names).Report.InOrder);

    /// <summary>What a finding of the only fault points at, in the author's words.</summary>
    public static string Pointed(string text, Diagnostic finding)
    {
        var place = finding.Place;
        Assert.Equal(1, place.Line);
        return Document(text)[(place.Column - 1)..(place.EndColumn - 1)];
    }

    public static (Expression Expression, Report Report) Compile(string text, Wanted? wanted = null, ExpressionNames? names = null)
    {
        var report = new Report();
        var batch = new ExpressionBatch(report, ExpressionCache.None);
        var node = Texts.FirstScalar(Document(text));
        var expression = batch.Add(node, 0, node.Text.Length, names ?? SmallPlant.Names, wanted ?? Wanted.Anything);
        Assert.Equal(!report.HasErrors, batch.Compile() || report.HasErrors);
        return (expression, report);
    }

    // In single quotes nearly everything stands as it is written.
    private static string Document(string text) => $"until: '{text.Replace("'", "''", StringComparison.Ordinal)}'";
}
