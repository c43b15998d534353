using EolSequencer.Language.Yaml;

namespace EolSequencer.Language.Syntax;

/// <summary>What may stand behind a key or in a list.</summary>
internal abstract record ValueForm
{
    private ValueForm() { }

    /// <summary>Whatever its own reader takes.</summary>
    public sealed record Anything : ValueForm;

    /// <summary>A text with something in it.</summary>
    /// <param name="Pattern">ECMAScript regular expression for the whole text; null: any text, also one that other readers take for a number.</param>
    /// <param name="About">What the text names or holds, for an editor.</param>
    public sealed record Text(string? Pattern, Subject About) : ValueForm;

    /// <summary>A text for people, in one or several languages.</summary>
    public sealed record Texts : ValueForm;

    /// <summary><c>yes</c> or <c>no</c>, without quotes.</summary>
    public sealed record YesNo : ValueForm;

    /// <summary>A whole number, both ends included.</summary>
    public sealed record Whole(long Least, long Most) : ValueForm;

    /// <summary>A duration, both ends included.</summary>
    public sealed record Duration(TimeSpan Least, TimeSpan Most) : ValueForm;

    /// <summary>One of some words.</summary>
    public sealed record Word(IReadOnlyList<string> All) : ValueForm;

    /// <summary>A list.</summary>
    /// <param name="AtLeast">How many items there are at least.</param>
    /// <param name="AreDistinct">True: no item stands twice.</param>
    public sealed record List(ValueForm Item, int AtLeast = 0, bool AreDistinct = false) : ValueForm;

    /// <summary>A map whose keys are names that its author chooses.</summary>
    /// <param name="Name">What such a name looks like.</param>
    /// <param name="AtLeast">How many there are at least.</param>
    public sealed record Names(Text Name, ValueForm Value, int AtLeast = 0) : ValueForm;

    /// <summary>A map of one shape.</summary>
    public sealed record Map(MapShape Shape) : ValueForm;

    /// <summary>A map of one shape that may have other keys as well.</summary>
    public sealed record Open(MapShape Shape) : ValueForm;

    /// <summary>A map whose form goes by the first of these keys that it has; one it must have.</summary>
    /// <param name="What">What such a map is, as messages call it.</param>
    /// <param name="IsKind">True: the key counts only with a text behind it.</param>
    public sealed record Cases(string What, IReadOnlyList<(string Key, ValueForm Form)> All, bool IsKind = false) : ValueForm
    {
        /// <summary>The key that decides; null when the map has none of them.</summary>
        public string? Of(YamlMap map) => All.Select(one => one.Key).FirstOrDefault(key => map.Find(key) is not null);

        /// <summary>The shape behind a key.</summary>
        public MapShape ShapeOf(string key) => ((Map)All.First(one => one.Key == key).Form).Shape;
    }

    /// <summary>Any of several forms.</summary>
    public sealed record Either(IReadOnlyList<ValueForm> All) : ValueForm;

    /// <summary>A form that is described elsewhere: steps lie in groups, and groups are steps.</summary>
    public sealed record Described(Func<ValueForm> Elsewhere) : ValueForm;

    /// <summary>This form and, where it is a choice of several, each of those.</summary>
    public IReadOnlyList<ValueForm> Alternatives() => this switch
    {
        Either either => [.. either.All.SelectMany(form => form.Alternatives())],
        Described described => described.Elsewhere().Alternatives(),
        _ => [this],
    };
}
