using System.Text;
using Microsoft.CodeAnalysis;
using Microsoft.CodeAnalysis.CSharp;
using Microsoft.CodeAnalysis.CSharp.Syntax;
using Microsoft.CodeAnalysis.Emit;
using Microsoft.CodeAnalysis.Text;

namespace EolSequencer.Language.Expressions.Compiling;

/// <summary>The expressions that can be read so far, bound by the compiler.</summary>
internal sealed class UnitRound
{
    private readonly CSharpCompilation _compilation;
    private readonly SemanticModel _model;
    private readonly ExpressionSyntax[] _expressions;

    public UnitRound(IEnumerable<Draft> drafts, CSharpCompilationOptions options)
    {
        Source = new UnitSource(drafts);
        var tree = CSharpSyntaxTree.ParseText(SourceText.From(Source.ToString(), Encoding.UTF8), ExpressionParser.Options, path: "expressions.cs");
        _compilation = CSharpCompilation.Create("expressions", [tree], ReferenceSet.All, options);
        _model = _compilation.GetSemanticModel(tree);
        _expressions = [.. tree.GetCompilationUnitRoot().Members.OfType<ClassDeclarationSyntax>().First().Members
            .OfType<MethodDeclarationSyntax>().Where(method => method.Body is not null).Select(ExpressionIn)];
    }

    public UnitSource Source { get; }

    /// <summary>Checks every expression that has no shape yet and settles it.</summary>
    public void Settle(ComputedShapes shapes)
    {
        foreach (var function in Source.Functions)
        {
            var expression = _expressions[function.Number];
            foreach (var draft in function.Drafts.Where(draft => shapes.IsPending(draft.Source.Expression)))
            {
                new MemberGuard(draft, function, _model).Check(expression);
                var shape = draft.HasFailed ? null : ShapeCheck.Of(draft, _model.GetTypeInfo(expression).Type);
                if (shape is not null) draft.Settle(shape);
                shapes.Settle(draft.Source.Expression, shape);
            }
        }
    }

    /// <summary>Emits the unit, or reports what the compiler says at the authors' places and returns false.</summary>
    public bool Emit(Stream code, Stream symbols)
    {
        var result = _compilation.Emit(code, symbols, options: new EmitOptions(debugInformationFormat: DebugInformationFormat.PortablePdb));
        var drafts = Source.Functions.SelectMany(function => function.Drafts).ToList();
        var sound = drafts.Where(draft => !draft.HasFailed).ToHashSet();
        foreach (var fault in result.Diagnostics.Where(one => one.Severity == Microsoft.CodeAnalysis.DiagnosticSeverity.Error)) Report(fault, sound);
        if (!result.Success && drafts.All(draft => !draft.HasFailed))
        {
            throw new InvalidOperationException($"the compiler refuses code of ours: {result.Diagnostics[0]}");
        }

        return result.Success;
    }

    /// <summary>Tells a fault to the authors of a function, unless theirs has been refused for better reasons.</summary>
    private void Report(Microsoft.CodeAnalysis.Diagnostic fault, HashSet<Draft> sound)
    {
        var span = fault.Location.SourceSpan;
        if (Source.Functions.FirstOrDefault(one => span.Start >= one.Start && span.Start <= one.End) is not { } function) return;
        var objection = CompilerWords.Of(fault, _expressions[function.Number].SyntaxTree.GetRoot(), _model);
        foreach (var draft in function.Drafts.Where(sound.Contains))
        {
            var (start, length) = draft.Edits.ToAuthor(span.Start - function.Start, span.Length);
            draft.Fault(objection.Code, new TextSpan(start, length), objection.Found, objection.Hint);
        }
    }

    private static ExpressionSyntax ExpressionIn(MethodDeclarationSyntax method) =>
        method.Body!.DescendantNodes().OfType<ReturnStatementSyntax>().First().Expression is InvocationExpressionSyntax give
            ? give.ArgumentList.Arguments[0].Expression
            : throw new InvalidOperationException($"{method.Identifier} hands nothing over");
}
