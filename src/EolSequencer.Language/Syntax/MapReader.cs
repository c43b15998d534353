using EolSequencer.Language.Diagnostics;
using EolSequencer.Language.Yaml;
using EolSequencer.Model.Source;

namespace EolSequencer.Language.Syntax;

/// <summary>
/// Reads the values of a map whose keys are known. Each method gives <c>null</c> when the key is absent, and also when
/// what is there was already reported; <see cref="Has"/> tells the two apart.
/// </summary>
internal sealed class MapReader
{
    private const int MostKeysListed = 12;

    private readonly MapShape _shape;

    private MapReader(YamlMap map, MapShape shape, Report report)
    {
        Map = map;
        _shape = shape;
        Report = report;
    }

    public YamlMap Map { get; }

    public Report Report { get; }

    /// <summary>Where to report what concerns the map as a whole: its first key.</summary>
    public SourcePlace Place => Map.Entries is [var first, ..] ? first.Key.Place : Map.Place;

    /// <summary>Takes a node for a map of a shape: reports another kind of node (and gives <c>null</c>), unknown and missing keys.</summary>
    public static MapReader? Open(YamlNode node, MapShape shape, Report report)
    {
        if (node.AsMap(shape.What, report) is not { } map) return null;

        var reader = new MapReader(map, shape, report);
        foreach (var entry in map.Entries)
        {
            if (!shape.Knows(entry.Key.Text)) reader.ReportUnknown(entry.Key);
        }

        foreach (var key in shape.Required)
        {
            if (!reader.Has(key)) report.Add(SyntaxCodes.MissingKey, reader.Place, $"{shape.What} has no '{key}'", $"add  {key}: …");
        }

        return reader;
    }

    /// <summary>True when the key is written, whether or not its value can be used.</summary>
    public bool Has(string key) => Entry(key) is not null;

    /// <summary>The value of a key.</summary>
    public YamlNode? Find(string key) => Entry(key)?.Value is { } value and not YamlRefused ? value : null;

    /// <summary>Where a key stands; where the map stands when the key is absent.</summary>
    public SourcePlace PlaceOf(string key) => Entry(key)?.Key.Place ?? Place;

    public YamlScalar? Text(string key) => As<ValueForm.Text, ValueForm.Word>(key)?.AsText(Named(key), Report);

    public LanguageTexts? Texts(string key) => As<ValueForm.Texts>(key)?.AsTexts(Named(key), Report);

    public bool? YesNo(string key) => As<ValueForm.YesNo>(key)?.AsYesNo(Named(key), Report);

    /// <summary>A whole number within what the shape allows.</summary>
    public long? Whole(string key) =>
        Find(key) is { } node && FormOf<ValueForm.Whole>(key) is var form ? node.AsWhole(Named(key), form.Least, form.Most, Report) : null;

    /// <summary>A duration within what the shape allows.</summary>
    public TimeSpan? Duration(string key) =>
        Find(key) is { } node && FormOf<ValueForm.Duration>(key) is var form ? node.AsDuration(Named(key), form.Least, form.Most, Report) : null;

    public T? Word<T>(string key, Words<T> words) where T : struct
    {
        if (Find(key) is not { } node) return null;
        if (IsDescribed(key) && !ReferenceEquals(FormOf<ValueForm.Word>(key).All, words.All)) throw new ArgumentException($"{_shape.What} declares other words for '{key}'", nameof(words));
        return node.AsWord(Named(key), words, Report);
    }

    /// <summary>The items of a list; empty when the key is absent or its value unusable.</summary>
    public IReadOnlyList<YamlNode> List(string key) => As<ValueForm.List>(key)?.AsList(Named(key), Report) ?? [];

    /// <summary>The items of a list, or the one item that was written without brackets; empty when the key is absent.</summary>
    public IReadOnlyList<YamlNode> OneOrMore(string key) => As<ValueForm.List>(key) is { } node ? node is YamlList list ? list.Items : [node] : [];

    /// <summary>A map with keys of its own choice.</summary>
    public YamlMap? FreeMap(string key) => As<ValueForm.Names, ValueForm.Open>(key)?.AsMap(Named(key), Report);

    public MapReader? Open(string key, MapShape shape)
    {
        if (Find(key) is not { } node) return null;
        if (IsDescribed(key) && !_shape.FormsOf(key).Any(form => form is ValueForm.Map map && map.Shape == shape)) throw new ArgumentException($"{_shape.What} declares no such map for '{key}'", nameof(shape));
        return Open(node, shape, Report);
    }

    /// <summary>Which one of several keys is there; none or two of them are reported.</summary>
    /// <param name="what">What the keys have in common, as the message calls it: "action".</param>
    public string? ExactlyOne(IReadOnlyList<string> keys, string what)
    {
        var present = keys.Where(Has).ToList();
        if (present is [var only]) return only;
        if (present.Count == 0)
        {
            Report.Add(SyntaxCodes.OneOfTheseKeys, Place, $"{_shape.What} has exactly one {what}, here is none", $"add {Shown.OneOf(keys)}");
            return null;
        }

        var second = present.Select(PlaceOf).OrderBy(place => (place.Line, place.Column)).ElementAt(1);
        var listed = string.Join(" and ", present.Select(key => $"'{key}'"));
        Report.Add(SyntaxCodes.OneOfTheseKeys, second, $"{_shape.What} has exactly one {what}, here are {listed}", "keep one of them");
        return null;
    }

    private YamlEntry? Entry(string key) =>
        _shape.Knows(key) ? Map.Find(key) : throw new ArgumentException($"{_shape.What} declares no key '{key}'", nameof(key));

    private bool IsDescribed(string key) => _shape.Find(key) is { Form: not ValueForm.Anything };

    // A key is read as what its shape says it is: this is what keeps schema and editor true.
    private TForm FormOf<TForm>(string key) where TForm : ValueForm =>
        _shape.FormsOf(key).OfType<TForm>().FirstOrDefault()
        ?? throw new ArgumentException($"{_shape.What} declares no {typeof(TForm).Name} for '{key}'", nameof(key));

    private YamlNode? As<TForm>(string key) where TForm : ValueForm => As<TForm, TForm>(key);

    private YamlNode? As<TForm, TOther>(string key) where TForm : ValueForm where TOther : ValueForm
    {
        if (Find(key) is not { } node) return null;
        if (IsDescribed(key) && !_shape.FormsOf(key).Any(form => form is TForm or TOther)) FormOf<TForm>(key);
        return node;
    }

    private static string Named(string key) => $"'{key}'";

    private void ReportUnknown(YamlScalar key)
    {
        var known = _shape.Keys.Count <= MostKeysListed ? $"its keys: {string.Join(", ", _shape.Keys)}" : null;
        var hint = Nearest.Of(key.Text, _shape.Keys) is { } meant ? $"did you mean '{meant}'?" : known;
        Report.Add(SyntaxCodes.UnknownKey, key.Place, $"{_shape.What} has no key {Shown.Quoted(key.Text)}", hint);
    }
}
