using System.Globalization;
using System.Text;
using EolSequencer.Model.Source;
using EolSequencer.Model.Units;

namespace EolSequencer.Language.Expressions.Compiling;

/// <summary>The C# text of a unit: one class with a function for each expression, one struct for each dimension.</summary>
internal sealed class UnitSource
{
    private const string Opening = "            return Give.Out(";

    private readonly StringBuilder _text = new();
    private readonly List<UnitFunction> _functions = [];

    /// <summary>Writes the text for drafts that have been finished.</summary>
    public UnitSource(IEnumerable<Draft> drafts)
    {
        var all = drafts.ToList();
        _text.Append($$"""
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
        _text.Line("}");
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
            var body = $"{draft.IsInexact} {CodeText.Field(draft.Units)} {draft.Written}";
            if (!known.TryGetValue(body, out var function))
            {
                function = new UnitFunction(_functions.Count);
                known.Add(body, function);
                _functions.Add(function);
                Write(function, draft);
            }

            function.Drafts.Add(draft);
        }

        _text.Append("    public override Func<IExpressionScope, Value>[] All() => [");
        _text.AppendJoin(", ", _functions.Select(function => function.Name));
        _text.Line("];");
    }

    private void Write(UnitFunction function, Draft draft)
    {
        _text.Append($$"""
                public Value {{function.Name}}(IExpressionScope {{CodeText.Scope}})
                {
                    var {{CodeText.Inexact}} = {{(draft.IsInexact ? "true" : "false")}};
                    try
                    {
            {{Mapping(draft.Source.Expression.Place)}}{{Opening}}
            """);
        function.Start = _text.Length;
        _text.Append($$"""
            {{draft.Written}}
            #line default
                        , {{CodeText.Inexact}}, {{CodeText.Field(draft.Units)}});
                    }
                    catch (Exception e) when (Faults.Speaks(e))
                    {
                        throw Faults.Of(e);
                    }
                }

            """);
    }

    // A stack trace shows the line where a statement begins, so the author's line begins with the statement.
    private static string Mapping(SourcePlace place) => place.Line == 0 ? "" : string.Create(CultureInfo.InvariantCulture,
        $"#line ({place.Line},{place.Column})-({place.EndLine},{Math.Max(place.EndColumn, place.Column + 1)}) {Opening.Length} \"{FileName(place.File)}\"\n");

    private void WriteFields(List<Draft> drafts)
    {
        foreach (var unit in UnitTable.All.Where(unit => drafts.Any(draft => draft.TakenUnits.Contains(unit))))
        {
            _text.Line($"    private readonly Unit {CodeText.Field(unit)} = UnitTable.Required({CodeText.Literal(unit.Symbol)});");
        }

        foreach (var units in drafts.Select(draft => draft.Units).DistinctBy(units => CodeText.Field(units)))
        {
            var items = string.Join(", ", units.Select(unit => $"UnitTable.Required({CodeText.Literal(unit.Symbol)})"));
            _text.Line($"    private readonly Unit[] {CodeText.Field(units)} = [{items}];");
        }
    }

    // A #line directive knows no escapes; the file is named for people who read a stack trace.
    private static string FileName(string file) =>
        string.Concat(file.Select(letter => letter == '"' || char.IsControl(letter) ? '_' : letter));
}
