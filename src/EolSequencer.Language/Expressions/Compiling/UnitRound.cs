using System.Text;
using Microsoft.CodeAnalysis;
using Microsoft.CodeAnalysis.CSharp;
using Microsoft.CodeAnalysis.CSharp.Syntax;
using Microsoft.CodeAnalysis.Emit;
using Microsoft.CodeAnalysis.Text;

namespace EolSequencer.Language.Expressions.Compiling;

/// <summary>The expressions that can be read so far, before the compiler.</summary>
internal sealed class UnitRound
{
    private static readonly EmitOptions Emission = new(debugInformationFormat: DebugInformationFormat.PortablePdb);

    private static readonly CSharpCompilationOptions Options = new(
        OutputKind.DynamicallyLinkedLibrary,
        optimizationLevel: OptimizationLevel.Release,
        checkOverflow: true,
        deterministic: true,
        nullableContextOptions: NullableContextOptions.Annotations);

    // What the compiler has read of the libraries stays with the compilation it read it for, and with those made of it.
    private static readonly CSharpCompilation Empty = CSharpCompilation.Create("expressions", references: ReferenceSet.All, options: Options);

    private readonly SyntaxTree _tree;
    private readonly CSharpCompilation _compilation;
    private readonly Lazy<SemanticModel> _model;

    public UnitRound(IEnumerable<Draft> drafts)
    {
        Source = new UnitSource(drafts);
        _tree = CSharpSyntaxTree.ParseText(SourceText.From(Source.ToString(), Encoding.UTF8), ExpressionParser.Options, path: "expressions.cs");
        _compilation = Empty.AddSyntaxTrees(_tree);
        _model = new(() => _compilation.GetSemanticModel(_tree));
    }

    public UnitSource Source { get; }

    /// <summary>Settles the shape of every expression that the compiler has to be asked about.</summary>
    public void Settle(ComputedShapes shapes)
    {
        foreach (var function in Source.Functions)
        {
            foreach (var draft in function.Drafts.Where(draft => shapes.IsPending(draft.Source.Expression)))
            {
                AskTypes(draft, function);
                shapes.Settle(draft.Source.Expression, draft.Shape);
            }
        }
    }

    /// <summary>Emits the unit, or reports what the compiler says at the authors' places and returns false.</summary>
    public bool Emit(Stream code, Stream symbols)
    {
        var result = _compilation.Emit(code, symbols, options: Emission);
        if (result.Success) return true;
        var drafts = Source.Functions.SelectMany(function => function.Drafts).ToList();
        var faults = result.Diagnostics.Where(one => one.Severity == Microsoft.CodeAnalysis.DiagnosticSeverity.Error)
            .GroupBy(fault => Source.FunctionAt(fault.Location.SourceSpan.Start)).ToList();
        foreach (var group in faults)
        {
            if (group.Key is { } function) Report(function, group);
        }

        if (drafts.All(draft => !draft.HasFailed)) throw new InvalidOperationException($"the compiler refuses code of ours: {faults[0].First()}");
        return false;
    }

    /// <summary>Tells faults to the authors of a function, unless there are better reasons to refuse theirs.</summary>
    private void Report(UnitFunction function, IEnumerable<Microsoft.CodeAnalysis.Diagnostic> faults)
    {
        foreach (var draft in function.Drafts.Where(draft => !draft.HasFailed)) AskTypes(draft, function);
        var sound = function.Drafts.Where(draft => !draft.HasFailed).ToList();
        foreach (var fault in faults)
        {
            var objection = CompilerWords.Of(fault, _tree.GetRoot(), _model.Value);
            foreach (var draft in sound)
            {
                var span = fault.Location.SourceSpan;
                var (start, length) = draft.Edits.ToAuthor(span.Start - function.Start, span.Length);
                draft.Fault(objection.Code, new TextSpan(start, length), objection.Found, objection.Hint);
            }
        }
    }

    /// <summary>The type that the compiler gives a function's value.</summary>
    public AuthorType? TypeOf(UnitFunction function) => AuthorType.Of(_model.Value.GetTypeInfo(ExpressionOf(function)).Type);

    private void AskTypes(Draft draft, UnitFunction function)
    {
        var expression = ExpressionOf(function);
        new MemberGuard(draft, function, _model.Value).Check(expression);
        var type = _model.Value.GetTypeInfo(expression).Type;
        if (draft.HasFailed || type is IErrorTypeSymbol) return;
        if (ShapeCheck.Of(draft, AuthorType.Of(type)) is { } shape) draft.Settle(shape);
    }

    private ExpressionSyntax ExpressionOf(UnitFunction function)
    {
        var method = (MethodDeclarationSyntax)_tree.GetCompilationUnitRoot().Members.OfType<ClassDeclarationSyntax>().First().Members[function.Number];
        var statement = method.Body!.Statements.OfType<ReturnStatementSyntax>().First();
        return ((InvocationExpressionSyntax)statement.Expression!).ArgumentList.Arguments[0].Expression;
    }
}
