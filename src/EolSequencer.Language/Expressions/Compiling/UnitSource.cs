using System.Globalization;
using System.Text;
using EolSequencer.Model.Source;
using EolSequencer.Model.Units;

namespace EolSequencer.Language.Expressions.Compiling;

/// <summary>The C# text of a unit: one class with a function for each expression, one struct for each dimension.</summary>
internal sealed class UnitSource
{
    private readonly StringBuilder _text = new();
    private readonly List<UnitFunction> _functions = [];

    /// <summary>Writes the text for drafts that have been finished.</summary>
    public UnitSource(IEnumerable<Draft> drafts)
    {
        var all = drafts.ToList();
        _text.Append($$"""
            using System;
            using System.Runtime.CompilerServices;
            using EolSequencer.Language.Expressions.Support;
            using EolSequencer.Model.Expressions;
            using EolSequencer.Model.Units;
            using EolSequencer.Model.Values;

            public sealed class {{Support.ExpressionUnit.TypeName}} : ExpressionUnit
            {

            """);
        WriteFunctions(all);
        WriteFields(all);
        _text.Line("}");
        foreach (var dimension in all.SelectMany(draft => draft.Dimensions).Distinct().Order()) QuantityStruct.Write(dimension, _text);
    }

    /// <summary>The functions, by number.</summary>
    public IReadOnlyList<UnitFunction> Functions => _functions;

    /// <summary>The function to whose author's text a position belongs; null for code of ours.</summary>
    public UnitFunction? FunctionAt(int position) =>
        _functions.Find(function => position >= function.Start && position <= function.End);

    /// <summary>Which function each expression became.</summary>
    public Dictionary<Draft, int> NumberByDraft() =>
        _functions.SelectMany(function => function.Drafts.Select(draft => (draft, function.Number))).ToDictionary(pair => pair.draft, pair => pair.Number);

    public override string ToString() => _text.ToString();

    private void WriteFunctions(List<Draft> drafts)
    {
        var known = new Dictionary<string, UnitFunction>(StringComparer.Ordinal);
        foreach (var draft in drafts)
        {
            var body = draft.Body;
            if (!known.TryGetValue(body, out var function))
            {
                function = new UnitFunction(_functions.Count);
                known.Add(body, function);
                _functions.Add(function);
                Write(function, draft);
            }

            function.Drafts.Add(draft);
        }

        _text.Append("    public override Func<ExpressionScope, Value>[] All() => [");
        _text.AppendJoin(", ", _functions.Select(function => function.Name));
        _text.Line("];");
    }

    private void Write(UnitFunction function, Draft draft)
    {
        var (opening, closing) = Handover(draft);
        _text.Line("[MethodImpl(MethodImplOptions.AggressiveOptimization)]"); // half the time to compile: no profile is consulted
        _text.Line($"public Value {function.Name}(ExpressionScope {CodeText.Scope})");
        _text.Line("{");
        _text.Append(Mapping(draft.Source.Expression.Place, opening)).Append(opening);
        function.Start = _text.Length;
        _text.Line(draft.Written);
        _text.Line("#line default");
        _text.Line(closing);
        _text.Line("}");
    }

    // A type that is known saves the compiler the choice between several ways to hand a value over.
    private static (string Opening, string Closing) Handover(Draft draft)
    {
        var inexact = $"var {CodeText.Inexact} = {(draft.IsInexact ? "true" : "false")}; ";
        return draft switch
        {
            { IsCondition: true } => ("return Condition(", ");"),
            { Type.IsBareNumber: true } => ($"{inexact}return Number(", $", {CodeText.Inexact});"),
            _ => ($"{inexact}return Out(", $", {CodeText.Inexact}, {CodeText.Field(draft.Units)});"),
        };
    }

    // A stack trace shows the line where a statement begins; where code of a library was taken into the function, that of its
    // first statement. So all of the function's statements stand on the author's line.
    private static string Mapping(SourcePlace place, string opening) => place.Line == 0 ? "" : string.Create(CultureInfo.InvariantCulture,
        $"#line ({place.Line},{place.Column})-({place.EndLine},{Math.Max(place.EndColumn, place.Column + 1)}) {opening.Length} \"{FileName(place.File)}\"\n");

    private void WriteFields(List<Draft> drafts)
    {
        foreach (var unit in UnitTable.All.Where(unit => drafts.Any(draft => draft.TakenUnits.Contains(unit))))
        {
            _text.Line($"    private readonly Unit {CodeText.Field(unit)} = UnitTable.Required({CodeText.Literal(unit.Symbol)});");
        }

        foreach (var units in drafts.Where(draft => !draft.IsCondition).Select(draft => draft.Units).DistinctBy(units => CodeText.Field(units)))
        {
            var items = string.Join(", ", units.Select(unit => $"UnitTable.Required({CodeText.Literal(unit.Symbol)})"));
            _text.Line($"    private readonly Unit[] {CodeText.Field(units)} = [{items}];");
        }
    }

    // A #line directive knows no escapes; the file is named for people who read a stack trace.
    private static string FileName(string file) =>
        string.Concat(file.Select(letter => letter == '"' || char.IsControl(letter) ? '_' : letter));
}
