using System.Text.Encodings.Web;
using System.Text.Json;
using System.Text.Json.Nodes;
using EolSequencer.Language.Binding;

namespace EolSequencer.Language.Schema;

/// <summary>
/// The JSON Schema of all kinds of file, for editors and other programs. It is made of the shapes that the files are read
/// by. What needs more than one place of a file (names, units, coverage) no schema says; <c>eol check</c> does.
/// </summary>
/// <remarks>JSON Schema draft 2020-12. It describes files as a reader of YAML 1.2 sees them (core schema).</remarks>
public static class SchemaDocument
{
    private static readonly JsonSerializerOptions Readable = new() { WriteIndented = true, NewLine = "\n", Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping };

    /// <summary>The schema as text, with LF at the ends of lines; the same for every call.</summary>
    public static string Text()
    {
        var forms = new FormSchemas();
        var file = forms.Of(FileShapes.Any);
        var document = new JsonObject
        {
            ["$schema"] = "https://json-schema.org/draft/2020-12/schema",
            ["title"] = "EolSequencer",
            ["description"] = "A file of a plant: what it is is said by its first key.",
        };
        foreach (var (key, value) in file.ToList())
        {
            file.Remove(key);
            document[key] = value;
        }

        document["$defs"] = forms.Definitions();
        return document.ToJsonString(Readable) + "\n";
    }
}
