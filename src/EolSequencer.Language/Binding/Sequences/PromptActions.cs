using EolSequencer.Language.Binding.Values;
using EolSequencer.Language.Syntax;
using EolSequencer.Model.Sequences;
using EolSequencer.Model.Values;

namespace EolSequencer.Language.Binding.Sequences;

/// <summary>Binds what a person does: <c>ask</c>, <c>judge</c>, <c>enter</c>, <c>scan</c>, <c>choose</c>. Null: already reported.</summary>
internal static class PromptActions
{
    public static BoundAction? Ask(MapReader keys, Scope scope)
    {
        var text = PromptTexts.Read(keys, "ask", scope);
        var until = Conditions.Add(keys, "until", scope.Names, scope.Context.Batch);
        var edge = keys.YesNo("edge") ?? true;
        return text is null ? null : new BoundAction(new StepAction.Ask(text, until, edge), keys.PlaceOf("ask"), null);
    }

    public static BoundAction? Judge(MapReader keys, Scope scope) => PromptTexts.Read(keys, "judge", scope) is { } text
        ? new BoundAction(new StepAction.Judge(text), keys.PlaceOf("judge"), null)
        : null;

    public static BoundAction? Scan(MapReader keys, Scope scope) => PromptTexts.Read(keys, "scan", scope) is { } text
        ? new BoundAction(new StepAction.Scan(text), keys.PlaceOf("scan"), ValueShape.Text())
        : null;

    public static BoundAction? Choose(MapReader keys, Scope scope)
    {
        var text = PromptTexts.Read(keys, "choose", scope);
        if (keys.Find("among") is not { } node || Ids.IndexValues(node, "'among'", scope.Report) is not { } among || text is null) return null;
        if (among.Length < 2)
        {
            scope.Report.Add(ShapeCodes.TooFewChoices, node.Place, $"only '{among[0]}' can be chosen");
            return null;
        }

        return new BoundAction(new StepAction.Choose(text, among), keys.PlaceOf("choose"), ValueShape.OneOf(among));
    }

    /// <summary>The type of a typed value is said by <c>as</c> and <c>unit</c>, or else by what is expected of it.</summary>
    public static BoundAction? Enter(MapReader keys, Scope scope)
    {
        var text = PromptTexts.Read(keys, "enter", scope);
        var shape = EnteredShape(keys, scope);
        return text is null || shape is null ? null : new BoundAction(new StepAction.Enter(text, shape), keys.PlaceOf("enter"), shape);
    }

    private static ValueShape? EnteredShape(MapReader keys, Scope scope)
    {
        if (keys.Has("as")) return Shapes.Read(keys.Find("as")!, "'as'", keys.Report) is { } shape ? Typed(shape, keys) : null;
        if (keys.Has("unit")) return Shapes.Unit(keys, "unit") is { } unit ? ValueShape.Number(unit) : null;
        return keys.Find("expect") is { } expect ? ExpectedShape.Of(expect, scope) ?? ValueShape.Text() : ValueShape.Text();
    }

    private static ValueShape? Typed(ValueShape shape, MapReader keys)
    {
        if (shape.Kind is not (ValueKind.Number or ValueKind.Text))
        {
            keys.Report.Add(ShapeCodes.UnknownType, keys.PlaceOf("as"), $"a person cannot type a {shape}", "write  as: number  or  as: text");
            return null;
        }

        if (!keys.Has("unit")) return shape;
        if (shape.Kind == ValueKind.Number) return Shapes.Unit(keys, "unit") is { } unit ? ValueShape.Number(unit) : null;
        keys.Report.Add(ShapeCodes.UnitOfNoNumber, keys.PlaceOf("unit"), $"a {shape} has no unit");
        return null;
    }
}
