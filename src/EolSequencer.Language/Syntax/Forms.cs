using EolSequencer.Model.Units;

namespace EolSequencer.Language.Syntax;

/// <summary>The forms that many keys share.</summary>
internal static class Forms
{
    private const string NumberPattern = @"[-+\u2212]?(?:0|[1-9][0-9]*)(?:\.[0-9]+)?";

    public static ValueForm Anything { get; } = new ValueForm.Anything();

    public static ValueForm.Text Text { get; } = new(null, Subject.None);

    public static ValueForm Texts { get; } = new ValueForm.Texts();

    public static ValueForm YesNo { get; } = new ValueForm.YesNo();

    /// <summary>C# that gives yes or no, or any value.</summary>
    public static ValueForm.Text Expression { get; } = new(null, Subject.Expression);

    /// <summary>A written value of a type that is not known here, or C# in brackets.</summary>
    public static ValueForm.Text Value { get; } = new(null, Subject.Value);

    /// <summary>A time, or C# in brackets.</summary>
    public static ValueForm Time { get; } = new ValueForm.Text($@"^(?:{TimePattern()}|\([\s\S]*\))$", Subject.Value);

    /// <summary>A time that is written down.</summary>
    public static string TimeText { get; } = $"^{TimePattern()}$";

    /// <summary>What a value must be.</summary>
    public static ValueForm Expectation { get; } = new ValueForm.Text(
        @"^\s*(?:(?:at least|at most|equals|one of|only|matches)(?![A-Za-z0-9_])[\s\S]*\S|empty|yes|no|limits\.[A-Za-z][\s\S]*|[\s\S]*(?:\.\.|\u00b1|\+/-)[\s\S]*)\s*$", Subject.Expectation);

    /// <summary>A number with or without a unit.</summary>
    public static ValueForm Quantity { get; } = new ValueForm.Text($@"^\s*{NumberPattern}(?:\s*\S[\s\S]*)?$", Subject.None);

    public static ValueForm UnitText { get; } = new ValueForm.Text($"^\\s*(?:{Spelled(UnitTable.All)})\\s*$", Subject.Unit);

    public static ValueForm Whole(long least, long most) => new ValueForm.Whole(least, most);

    public static ValueForm Duration(TimeSpan least, TimeSpan most) => new ValueForm.Duration(least, most);

    public static ValueForm Word<T>(Words<T> words) => new ValueForm.Word(words.All);

    public static ValueForm Word(params string[] words) => new ValueForm.Word(words);

    public static ValueForm Named(Subject subject) => new ValueForm.Text(null, subject);

    public static ValueForm List(ValueForm item, int atLeast = 0) => new ValueForm.List(item, atLeast);

    /// <summary>One item, or a list of them.</summary>
    public static ValueForm OneOrMore(ValueForm item) => new ValueForm.Either([item, new ValueForm.List(item)]);

    public static ValueForm Names(ValueForm.Text name, ValueForm value, int atLeast = 0) => new ValueForm.Names(name, value, atLeast);

    public static ValueForm Map(MapShape shape) => new ValueForm.Map(shape);

    public static ValueForm Either(params ValueForm[] forms) => new ValueForm.Either(forms);

    private static string TimePattern() => $@"{NumberPattern}\s*(?:{Spelled(UnitTable.Of(Dimension.Time))})";

    // Only what ECMAScript takes for more than a letter is escaped: the validator's regular expressions refuse other escapes.
    private static string Spelled(IEnumerable<Unit> units) => string.Join('|', units
        .SelectMany(unit => unit.OtherSpellings.Prepend(unit.Symbol))
        .Select(spelling => string.Concat(spelling.Select(letter => letter is '.' or '(' or ')' or '/' or '*' or '^' or '$' or '+' or '?' ? $"\\{letter}" : $"{letter}"))));
}
