using System.Text.Encodings.Web;
using System.Text.Json;
using System.Text.Json.Serialization;
using Spectre.Console;

namespace EolSequencer.Cli.Output;

/// <summary>Output for programs: one JSON document, never wrapped to a terminal's width.</summary>
internal static class JsonOutput
{
    private static readonly JsonSerializerOptions Options = new()
    {
        WriteIndented = true,
        Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping,
        DefaultIgnoreCondition = JsonIgnoreCondition.WhenWritingNull,
    };

    public static void Write(IAnsiConsole console, object document)
    {
        console.Profile.Out.Writer.WriteLine(JsonSerializer.Serialize(document, Options));
    }
}
