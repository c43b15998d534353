using System.Collections.Immutable;
using System.Globalization;
using EolSequencer.Language.Diagnostics;
using EolSequencer.Language.Expectations;
using EolSequencer.Language.Syntax;
using EolSequencer.Language.Yaml;
using EolSequencer.Model.Units;
using EolSequencer.Model.Values;

namespace EolSequencer.Language.Binding.Values;

/// <summary>Reads types of values: <c>as: number, unit: V</c>, <c>as: text(12)</c>, <c>one-of: [a, b]</c>.</summary>
internal static class Shapes
{
    private static readonly string[] Types = ["number", "text", "text(n)", "yes-no", "time", "list"];

    /// <summary>What stands behind <c>as</c>.</summary>
    public static ValueForm WordForm { get; } = new ValueForm.Text("^(?:number|text|yes-no|time|list|text\\(\\s*0*(?:[1-9]|[1-9][0-9]|1[0-9][0-9]|2[0-4][0-9]|25[0-5])\\s*\\))$", Subject.None);

    /// <summary>The keys by which a map declares a type.</summary>
    public static MapKey[] Keys { get; } =
    [
        new("as", WordForm, "type of the value: number, text, text(n), yes-no, time, list"),
        new("unit", Forms.UnitText, "unit of a number; without it the number is a count"),
        new("one-of", Ids.Choices, "the only values possible"),
    ];

    /// <summary>The keys of which a type has exactly one.</summary>
    public static string[] EitherOf { get; } = ["as", "one-of"];

    private static readonly MapShape OwnMap = new("a type", [], Keys, EitherOf);

    /// <summary>A type that stands behind one key.</summary>
    public static ValueForm Form { get; } = Forms.Either(WordForm, Forms.Map(OwnMap));

    /// <summary>A type that stands behind one key: a word such as <c>yes-no</c>, or a map; null: already reported.</summary>
    public static ValueShape? Read(YamlNode node, string what, Report report)
    {
        if (node is not YamlMap) return OfWord(node, what, report);
        return MapReader.Open(node, OwnMap, report) is { } keys ? Read(keys) : null;
    }

    /// <summary>The type that <c>as</c>, <c>unit</c> and <c>one-of</c> of a map declare; null: already reported.</summary>
    public static ValueShape? Read(MapReader keys)
    {
        if (keys.ExactlyOne(EitherOf, "type") is not { } key || keys.Find(key) is not { } node) return null;
        var shape = key == "as" ? OfWord(node, "'as'", keys.Report) : Choices(node, keys.Report) is { } choices ? ValueShape.OneOf(choices) : null;
        if (shape is null || !keys.Has("unit")) return shape;

        if (shape.Kind != ValueKind.Number)
        {
            keys.Report.Add(ShapeCodes.UnitOfNoNumber, keys.PlaceOf("unit"), $"a {shape} has no unit");
            return null;
        }

        return Unit(keys, "unit") is { } unit ? ValueShape.Number(unit) : null;
    }

    /// <summary>The unit behind a key; null: absent, or already reported.</summary>
    public static Unit? Unit(MapReader keys, string key) =>
        keys.Text(key) is { } text && QuantityParser.TryParseUnit(ScalarPart.Whole(text), keys.Report, out var unit) ? unit : null;

    /// <summary>The length in a type such as <c>text(17)</c>; null when it is none; 0 when the length cannot be.</summary>
    public static int? LengthOf(string type, string name)
    {
        if (!type.StartsWith(name + "(", StringComparison.Ordinal) || !type.EndsWith(')')) return null;
        var digits = type.AsSpan(name.Length + 1, type.Length - name.Length - 2).Trim();
        return int.TryParse(digits, NumberStyles.None, CultureInfo.InvariantCulture, out var length) && length is > 0 and <= 255 ? length : 0;
    }

    private static ValueShape? OfWord(YamlNode node, string what, Report report)
    {
        if (node.AsText(what, report) is not { } word) return null;
        switch (word.Text)
        {
            case "number": return ValueShape.Count;
            case "text": return ValueShape.Text();
            case "yes-no": return ValueShape.Truth;
            case "time": return ValueShape.Time;
            case "list": return ValueShape.List;
        }

        if (LengthOf(word.Text, "text") is { } length)
        {
            if (length > 0) return ValueShape.Text(length);
            report.Add(ShapeCodes.BadLength, word.Place, $"{Shown.Quoted(word.Text)} has no length that a text can have");
            return null;
        }

        ReportUnknown(word, what, Types, report);
        return null;
    }

    /// <summary>Reports a word that is no type.</summary>
    public static void ReportUnknown(YamlScalar word, string what, IReadOnlyList<string> types, Report report) => report.Add(
        ShapeCodes.UnknownType,
        word.Place,
        $"{what} cannot be {Shown.Quoted(word.Text)}",
        Nearest.Of(word.Text, types) is { } near ? $"did you mean '{near}'? Possible is {Shown.OneOf(types)}" : $"write {Shown.OneOf(types)}");

    private static ImmutableArray<string>? Choices(YamlNode node, Report report)
    {
        if (Ids.IndexValues(node, "'one-of'", report) is not { } choices) return null;
        if (choices.Length > 1) return choices;
        report.Add(ShapeCodes.TooFewChoices, node.Place, $"only '{choices[0]}' can be chosen");
        return null;
    }
}
