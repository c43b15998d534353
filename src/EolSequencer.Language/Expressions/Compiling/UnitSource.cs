using System.Globalization;
using System.Text;
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
        _text.Append(CultureInfo.InvariantCulture, $$"""
            using System;
            using EolSequencer.Language.Expressions.Support;
            using EolSequencer.Model.Expressions;
            using EolSequencer.Model.Judging;
            using EolSequencer.Model.Units;
            using EolSequencer.Model.Values;
            using static EolSequencer.Language.Expressions.Support.Functions;

            public sealed class {{Support.ExpressionUnit.TypeName}} : ExpressionUnit
            {

            """);
        WriteFunctions(all);
        WriteFields(all);
        _text.AppendLine("}");
        foreach (var dimension in all.SelectMany(draft => draft.Dimensions).Distinct().Order()) QuantityStruct.Write(dimension, _text);
    }

    /// <summary>The functions, by number.</summary>
    public IReadOnlyList<UnitFunction> Functions => _functions;

    public override string ToString() => _text.ToString();

    private void WriteFunctions(List<Draft> drafts)
    {
        var known = new Dictionary<string, UnitFunction>(StringComparer.Ordinal);
        foreach (var draft in drafts)
        {
            var (head, tail) = Frame(draft);
            var body = head + draft.Written + tail;
            if (!known.TryGetValue(body, out var function))
            {
                function = new UnitFunction(_functions.Count);
                known.Add(body, function);
                _functions.Add(function);
                Write(function, draft, head, tail);
            }

            function.Drafts.Add(draft);
        }

        _text.Append("    public override Func<IExpressionScope, Value>[] All() => [");
        _text.AppendJoin(", ", _functions.Select(function => function.Name));
        _text.AppendLine("];");
    }

    private void Write(UnitFunction function, Draft draft, string head, string tail)
    {
        var place = draft.Source.Expression.Place;
        _text.AppendLine(CultureInfo.InvariantCulture, $"    public Value {function.Name}(IExpressionScope {CodeText.Scope})");
        _text.AppendLine("    {");
        _text.AppendLine(head);
        if (place.Line > 0)
        {
            _text.AppendLine(CultureInfo.InvariantCulture,
                $"#line ({place.Line},{place.Column})-({place.EndLine},{Math.Max(place.EndColumn, place.Column + 1)}) 1 \"{FileName(place.File)}\"");
        }

        function.Start = _text.Length;
        _text.AppendLine(draft.Written);
        _text.AppendLine("#line default");
        _text.AppendLine(tail);
        _text.AppendLine("    }");
    }

    private static (string Head, string Tail) Frame(Draft draft) => (
        $"        var {CodeText.Inexact} = {(draft.IsInexact ? "true" : "false")}; try {{ return Give.Out(",
        $"        , {CodeText.Inexact}, {CodeText.Field(draft.Units)}); }} catch (Exception e) when (Faults.Speaks(e)) {{ throw Faults.Of(e); }}");

    private void WriteFields(List<Draft> drafts)
    {
        foreach (var unit in UnitTable.All.Where(unit => drafts.Any(draft => draft.TakenUnits.Contains(unit))))
        {
            _text.AppendLine(CultureInfo.InvariantCulture, $"    private readonly Unit {CodeText.Field(unit)} = UnitTable.Required({CodeText.Literal(unit.Symbol)});");
        }

        foreach (var units in drafts.Select(draft => draft.Units).DistinctBy(units => CodeText.Field(units)))
        {
            var items = string.Join(", ", units.Select(unit => $"UnitTable.Required({CodeText.Literal(unit.Symbol)})"));
            _text.AppendLine(CultureInfo.InvariantCulture, $"    private readonly Unit[] {CodeText.Field(units)} = [{items}];");
        }
    }

    // A #line directive knows no escapes; the file is named for people who read a stack trace.
    private static string FileName(string file) =>
        string.Concat(file.Select(letter => letter == '"' || char.IsControl(letter) ? '_' : letter));
}
