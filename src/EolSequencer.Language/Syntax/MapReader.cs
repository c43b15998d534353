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

    public YamlScalar? Text(string key) => Find(key)?.AsText(Named(key), Report);

    public LanguageTexts? Texts(string key) => Find(key)?.AsTexts(Named(key), Report);

    public bool? YesNo(string key) => Find(key)?.AsYesNo(Named(key), Report);

    /// <summary>A whole number within <paramref name="least"/> and <paramref name="most"/>, both included.</summary>
    public long? Whole(string key, long least, long most) => Find(key)?.AsWhole(Named(key), least, most, Report);

    /// <summary>A duration within <paramref name="least"/> and <paramref name="most"/>, both included.</summary>
    public TimeSpan? Duration(string key, TimeSpan least, TimeSpan most) => Find(key)?.AsDuration(Named(key), least, most, Report);

    public T? Word<T>(string key, Words<T> words) where T : struct => Find(key)?.AsWord(Named(key), words, Report);

    /// <summary>The items of a list; empty when the key is absent or its value unusable.</summary>
    public IReadOnlyList<YamlNode> List(string key) => Find(key)?.AsList(Named(key), Report) ?? [];

    /// <summary>The items of a list, or the one item that was written without brackets; empty when the key is absent.</summary>
    public IReadOnlyList<YamlNode> OneOrMore(string key) => Find(key) is { } node ? node is YamlList list ? list.Items : [node] : [];

    /// <summary>A map with keys of its own choice.</summary>
    public YamlMap? FreeMap(string key) => Find(key)?.AsMap(Named(key), Report);

    public MapReader? Open(string key, MapShape shape) => Find(key) is { } node ? Open(node, shape, Report) : null;

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

    private static string Named(string key) => $"'{key}'";

    private void ReportUnknown(YamlScalar key)
    {
        var known = _shape.Keys.Count <= MostKeysListed ? $"its keys: {string.Join(", ", _shape.Keys)}" : null;
        var hint = Nearest.Of(key.Text, _shape.Keys) is { } meant ? $"did you mean '{meant}'?" : known;
        Report.Add(SyntaxCodes.UnknownKey, key.Place, $"{_shape.What} has no key {Shown.Quoted(key.Text)}", hint);
    }
}
