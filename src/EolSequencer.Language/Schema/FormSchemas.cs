using System.Text.Json.Nodes;
using EolSequencer.Language.Syntax;

namespace EolSequencer.Language.Schema;

/// <summary>Writes forms as schemas. Shapes and patterns stand once, in the definitions.</summary>
internal sealed class FormSchemas
{
    private readonly SortedDictionary<string, JsonObject> _definitions = new(StringComparer.Ordinal);
    private readonly Dictionary<object, string> _names = [];

    public JsonObject Definitions() => new(_definitions.Select(one => KeyValuePair.Create(one.Key, (JsonNode?)one.Value)));

    public JsonObject Of(ValueForm form) => form switch
    {
        ValueForm.Text { Pattern: { } pattern } => Defined(pattern, "text", () => Pattern(pattern)),
        ValueForm.Text => Defined("", "text", AnyText),
        ValueForm.Texts => Defined(form, "texts", Texts),
        ValueForm.YesNo => new JsonObject { ["enum"] = new JsonArray("yes", "no", true, false) },
        ValueForm.Whole whole => Whole(whole),
        ValueForm.Duration => Defined(Forms.TimeText, "duration", () => new JsonObject { ["type"] = "string", ["pattern"] = Forms.TimeText }),
        ValueForm.Word word => new JsonObject { ["enum"] = Array(word.All) },
        ValueForm.List list => List(list),
        ValueForm.Names names => Names(names),
        ValueForm.Map map => Shape(map.Shape, isOpen: false),
        ValueForm.Open open => Shape(open.Shape, isOpen: true),
        ValueForm.Cases cases => Defined(cases.What, cases.What, () => Cases(cases)),
        ValueForm.Either either => new JsonObject { ["anyOf"] = new JsonArray([.. either.All.Select(Of)]) },
        ValueForm.Described described => Of(described.Elsewhere()),
        _ => [],
    };

    // A plain 007, 1.5 or true is a text where a text is wanted; nothing at all is not.
    private static JsonObject AnyText() => new() { ["type"] = Array(["string", "number", "boolean"]), ["minLength"] = 1 };

    private static JsonObject Pattern(string pattern) => new() { ["type"] = Array(["string", "number"]), ["minLength"] = 1, ["pattern"] = pattern };

    private static JsonObject Texts() => new()
    {
        ["type"] = Array(["string", "number", "boolean", "object"]),
        ["minLength"] = 1,
        ["minProperties"] = 1,
        ["propertyNames"] = new JsonObject { ["pattern"] = "^[a-z]{2}$" },
        ["additionalProperties"] = AnyText(),
    };

    // U+2212 is a minus for us and a letter for YAML.
    private static JsonObject Whole(ValueForm.Whole whole)
    {
        var number = new JsonObject { ["type"] = "integer", ["minimum"] = whole.Least, ["maximum"] = whole.Most };
        return whole.Least >= 0 ? number : new JsonObject { ["anyOf"] = new JsonArray(number, new JsonObject { ["type"] = "string", ["pattern"] = "^\u2212(?:0|[1-9][0-9]*)$" }) };
    }

    private JsonObject List(ValueForm.List list)
    {
        var schema = new JsonObject { ["type"] = "array", ["items"] = Of(list.Item) };
        if (list.AtLeast > 0) schema["minItems"] = list.AtLeast;
        if (list.AreDistinct) schema["uniqueItems"] = true;
        return schema;
    }

    private JsonObject Names(ValueForm.Names names)
    {
        var schema = new JsonObject { ["type"] = "object", ["additionalProperties"] = Of(names.Value) };
        if (names.Name.Pattern is not null) schema["propertyNames"] = Of(names.Name);
        if (names.AtLeast > 0) schema["minProperties"] = names.AtLeast;
        return schema;
    }

    private JsonObject Shape(MapShape shape, bool isOpen) => Defined(shape, shape.What, () =>
    {
        var schema = new JsonObject
        {
            ["type"] = "object",
            ["properties"] = new JsonObject(shape.AllKeys.Select(key => KeyValuePair.Create(key.Name, (JsonNode?)Key(key)))),
            ["additionalProperties"] = isOpen,
        };
        if (shape.Required.Count > 0) schema["required"] = Array(shape.Required);
        if (shape.ExactlyOne.Count > 0) schema["oneOf"] = new JsonArray([.. shape.ExactlyOne.Select(Requires)]);
        return schema;
    });

    private JsonObject Key(MapKey key)
    {
        var schema = Of(key.Form);
        if (key.Meaning.Length > 0) schema["description"] = key.Meaning;
        return schema;
    }

    /// <summary>The form that counts is that of the first key the map has. All keys are listed once more, for editors that look there for names.</summary>
    private JsonObject Cases(ValueForm.Cases cases)
    {
        var rules = new JsonArray();
        for (var number = 0; number < cases.All.Count; number++)
        {
            var (key, form) = cases.All[number];
            var when = Has(key, cases);
            if (number > 0) when["not"] = new JsonObject { ["anyOf"] = new JsonArray([.. cases.All.Take(number).Select(earlier => Has(earlier.Key, cases))]) };
            rules.Add(new JsonObject { ["if"] = when, ["then"] = Of(form) });
        }

        return new JsonObject
        {
            ["type"] = "object",
            ["properties"] = new JsonObject(KeysOf(cases).DistinctBy(key => key.Name).Select(key => KeyValuePair.Create(key.Name, (JsonNode?)new JsonObject { ["description"] = key.Meaning }))),
            ["anyOf"] = new JsonArray([.. cases.All.Select(one => Requires(one.Key))]),
            ["allOf"] = rules,
        };
    }

    private static JsonObject Has(string key, ValueForm.Cases cases)
    {
        var schema = Requires(key);
        if (cases.IsKind) schema["properties"] = new JsonObject { [key] = new JsonObject { ["not"] = new JsonObject { ["type"] = "object" } } };
        return schema;
    }

    private static IEnumerable<MapKey> KeysOf(ValueForm form) => form.Alternatives().SelectMany(one => one switch
    {
        ValueForm.Map map => map.Shape.AllKeys,
        ValueForm.Cases cases => cases.All.SelectMany(inner => KeysOf(inner.Form)),
        _ => [],
    });

    private static JsonObject Requires(string key) => new() { ["required"] = new JsonArray(key) };

    /// <summary>A reference to a definition, which is made when it is first referred to.</summary>
    private JsonObject Defined(object identity, string what, Func<JsonObject> make)
    {
        if (!_names.TryGetValue(identity, out var name))
        {
            name = _names[identity] = Free(NameOf(what));
            _definitions[name] = []; // shapes lie in each other
            _definitions[name] = make();
        }

        return new JsonObject { ["$ref"] = $"#/$defs/{name}" };
    }

    private static string NameOf(string what)
    {
        var words = what.Split(' ', '\'', ',').Where(word => word is not ("" or "a" or "an" or "the" or "with" or "of" or "or" or "for"));
        return string.Join('-', words);
    }

    private string Free(string name)
    {
        if (!_definitions.ContainsKey(name)) return name;
        var number = 2;
        while (_definitions.ContainsKey($"{name}-{number}")) number++;
        return $"{name}-{number}";
    }

    private static JsonArray Array(IEnumerable<string> texts) => [.. texts.Select(text => (JsonNode?)text)];
}
