using System.Text;
using System.Text.Json.Nodes;

namespace EolSequencer.Cli.Tests.LanguageServer;

/// <summary>The real program over its standard streams, as an editor drives it (Language Server Protocol 3.17).</summary>
public sealed class LanguageServerTests
{
    private const string File = "startup/startup.yaml";

    [Fact]
    public void An_editor_opens_types_asks_and_leaves()
    {
        using var editor = new EditorProcess();
        var capabilities = editor.Result("initialize", new JsonObject { ["processId"] = null, ["rootUri"] = null, ["capabilities"] = new JsonObject() })!["capabilities"]!;
        Assert.Equal("utf-16", capabilities["positionEncoding"]!.GetValue<string>());
        editor.Tell("initialized", new JsonObject());

        var text = System.IO.File.ReadAllText(editor.PathOf(File));
        editor.Tell("textDocument/didOpen", new JsonObject { ["textDocument"] = new JsonObject { ["uri"] = editor.UriOf(File), ["languageId"] = "yaml", ["version"] = 1, ["text"] = text } });
        Assert.DoesNotContain(editor.Published(File, _ => true), one => one!["severity"]!.GetValue<int>() == 1);

        // A slip in the name of a channel, typed into one line.
        var (line, column) = Find(text, "read: meter.battery_voltage");
        var slip = new JsonObject { ["start"] = At(line, column + 12), ["end"] = At(line, column + 27) };
        Change(editor, 2, slip, "battery_voltag");
        var fault = Assert.Single(editor.Published(File, found => found.Count > 0), one => one!["code"]!.GetValue<string>() == "SEQ012");
        Assert.Equal((line, column + 12), Place(fault!["range"]!["start"]!));
        Assert.Equal((line, column + 26), Place(fault["range"]!["end"]!));

        // Half of a name: what could follow.
        Change(editor, 3, new JsonObject { ["start"] = At(line, column + 12), ["end"] = At(line, column + 26) }, "bat");
        var items = editor.Result("textDocument/completion", Where(editor, line, column + 15))!["items"]!.AsArray();
        var item = Assert.Single(items, one => one!["label"]!.GetValue<string>() == "battery_voltage");
        Assert.Equal((line, column + 12), Place(item!["textEdit"]!["range"]!["start"]!));
        Assert.Equal("number in V", item["detail"]!.GetValue<string>());

        Change(editor, 4, new JsonObject { ["start"] = At(line, column + 12), ["end"] = At(line, column + 15) }, "battery_voltage");
        Assert.DoesNotContain(editor.Published(File, found => found.All(one => one!["severity"]!.GetValue<int>() != 1)), one => one!["code"]!.GetValue<string>() == "SEQ012");

        var (tyres, at) = Find(text, "read: bus.tyre_circumference");
        var shown = editor.Result("textDocument/hover", Where(editor, tyres, at + 12))!["contents"]!["value"]!.GetValue<string>();
        Assert.Contains("data identifier 0x", shown, StringComparison.Ordinal);
        Assert.Contains("mm", shown, StringComparison.Ordinal);

        var (use, behind) = Find(text, "use: window");
        var place = editor.Result("textDocument/definition", Where(editor, use, behind + 7))!;
        Assert.Equal(editor.UriOf("fragments/window.yaml"), place["uri"]!.GetValue<string>());

        Assert.Null(editor.Ask("shutdown", null)["result"]);
        editor.Tell("exit", null);
        Assert.Equal(0, editor.End().Code);
    }

    [Fact]
    public void It_knows_the_traces_of_a_fragment_and_the_steps_of_tests()
    {
        const string Fragment = "fragments/window.yaml";
        const string Tests = "startup/startup.expect.yaml";
        using var editor = Started();
        Open(editor, Fragment);
        var (line, column) = Find(System.IO.File.ReadAllText(editor.PathOf(Fragment)), "trace.travel.bus.window_position[side].percent.falls");
        Assert.Equal(["window_current", "window_position"], Labels(editor, Fragment, line, column + "trace.travel.bus.".Length));
        Assert.Contains("settles", Labels(editor, Fragment, line, column + "trace.travel.bus.window_position[side].percent.".Length));
        var hover = editor.Result("textDocument/hover", Where(editor, Fragment, line, column + "trace.travel.bus.window_position[side].percent.fa".Length))!["contents"]!["value"]!.GetValue<string>();
        Assert.Contains("the first moment at which it passes a level downwards", hover, StringComparison.Ordinal);

        Open(editor, Tests);
        var (steps, at) = Find(System.IO.File.ReadAllText(editor.PathOf(Tests)), "brake_lamps.current:");
        var labels = Labels(editor, Tests, steps, at + 3);
        Assert.Contains("brake_lamps.seen", labels);
        Assert.Contains("lamps.current", labels);
        Assert.DoesNotContain("lamps", labels);
    }

    [Fact]
    public void The_text_in_the_window_counts_for_the_whole_plant_and_the_file_again_when_it_is_closed()
    {
        using var editor = Started();
        Open(editor, File);
        editor.Published(File, _ => true);
        var type = System.IO.File.ReadAllText(editor.PathOf("vehicle-types/orrin.yaml"));
        editor.Tell("textDocument/didOpen", new JsonObject
        {
            ["textDocument"] = new JsonObject
            {
                ["uri"] = editor.UriOf("vehicle-types/orrin.yaml"), ["languageId"] = "yaml", ["version"] = 1, ["text"] = type.Replace("  immobiliser_paired:", "  immobiliser_known:", StringComparison.Ordinal),
            },
        });
        Assert.Contains(editor.Published(File, found => found.Count > 0 && found.Any(one => one!["code"]!.GetValue<string>() == "SEQ012")), _ => true);
        for (var time = 0; time < 2; time++) editor.Tell("textDocument/didClose", new JsonObject { ["textDocument"] = new JsonObject { ["uri"] = editor.UriOf("vehicle-types/orrin.yaml") } });
        editor.Published(File, found => found.All(one => one!["code"]!.GetValue<string>() != "SEQ012"));
    }

    [Fact]
    public void What_it_does_not_know_it_says_so_and_goes_on()
    {
        using var editor = new EditorProcess();
        Assert.Equal(-32002, editor.Ask("textDocument/hover", Where(editor, 0, 0))["error"]!["code"]!.GetValue<int>());
        editor.Result("initialize", new JsonObject { ["capabilities"] = new JsonObject() });
        Assert.Equal(-32601, editor.Ask("textDocument/sing", new JsonObject())["error"]!["code"]!.GetValue<int>());
        editor.Tell("$/cancelSinging", new JsonObject());
        editor.Tell("textDocument/didClose", new JsonObject { ["textDocument"] = new JsonObject { ["uri"] = editor.UriOf(File) } });
        editor.Tell("textDocument/didChange", new JsonObject { ["textDocument"] = new JsonObject { ["uri"] = editor.UriOf(File), ["version"] = 2 }, ["contentChanges"] = new JsonArray(new JsonObject { ["text"] = "x" }) });
        Assert.Null(editor.Result("textDocument/hover", Where(editor, 0, 0)));
        Assert.Null(editor.Result("textDocument/definition", new JsonObject { ["textDocument"] = new JsonObject { ["uri"] = "untitled:one" }, ["position"] = At(0, 0) }));
        Open(editor, File);
        Assert.Null(editor.Result("textDocument/definition", Where(editor, 1_000_000, 7)));
        editor.Ask("shutdown", null);
        Assert.Equal(-32600, editor.Ask("textDocument/hover", Where(editor, 0, 0))["error"]!["code"]!.GetValue<int>());
        editor.Tell("exit", null);
        Assert.Equal(0, editor.End().Code);
    }

    [Theory]
    [InlineData("this is no protocol at all\r\n\r\n{}\r\n\r\n")]
    [InlineData("Content-Length: 9\r\n\r\n{ broken}")]
    [InlineData("Content-Length: -5\r\n\r\n")]
    public void Garbage_ends_it_with_a_word_and_no_stack_trace(string garbage)
    {
        using var editor = Started();
        editor.SendRaw(Encoding.UTF8.GetBytes(garbage));
        editor.HangUp();
        var (code, errors) = editor.End();
        Assert.Equal(1, code);
        Assert.DoesNotContain("   at ", errors, StringComparison.Ordinal);
    }

    [Fact]
    public void An_editor_that_leaves_without_a_word_ends_it()
    {
        using var editor = Started();
        Open(editor, File);
        editor.HangUp();
        Assert.Equal(1, editor.End().Code);
    }

    [Fact]
    public void Leaving_without_a_shutdown_is_told_by_the_exit_code()
    {
        using var editor = Started();
        editor.Tell("exit", null);
        Assert.Equal(1, editor.End().Code);
    }

    private static EditorProcess Started()
    {
        var editor = new EditorProcess();
        editor.Result("initialize", new JsonObject { ["capabilities"] = new JsonObject() });
        editor.Tell("initialized", new JsonObject());
        return editor;
    }

    private static void Open(EditorProcess editor, string file) => editor.Tell("textDocument/didOpen", new JsonObject
    {
        ["textDocument"] = new JsonObject { ["uri"] = editor.UriOf(file), ["languageId"] = "yaml", ["version"] = 1, ["text"] = System.IO.File.ReadAllText(editor.PathOf(file)) },
    });

    private static void Change(EditorProcess editor, int version, JsonNode range, string text) => editor.Tell("textDocument/didChange", new JsonObject
    {
        ["textDocument"] = new JsonObject { ["uri"] = editor.UriOf(File), ["version"] = version },
        ["contentChanges"] = new JsonArray(new JsonObject { ["range"] = range, ["text"] = text }),
    });

    private static JsonObject Where(EditorProcess editor, int line, int character) => Where(editor, File, line, character);

    private static JsonObject Where(EditorProcess editor, string file, int line, int character) =>
        new() { ["textDocument"] = new JsonObject { ["uri"] = editor.UriOf(file) }, ["position"] = At(line, character) };

    private static IEnumerable<string> Labels(EditorProcess editor, string file, int line, int character) =>
        editor.Result("textDocument/completion", Where(editor, file, line, character))!["items"]!.AsArray().Select(item => item!["label"]!.GetValue<string>().TrimEnd(':', ' '));

    private static JsonObject At(int line, int character) => new() { ["line"] = line, ["character"] = character };

    private static (int, int) Place(JsonNode position) => (position["line"]!.GetValue<int>(), position["character"]!.GetValue<int>());

    private static (int Line, int Column) Find(string text, string wanted)
    {
        var lines = text.Split('\n');
        var line = Array.FindIndex(lines, one => one.Contains(wanted, StringComparison.Ordinal));
        return (line, lines[line].IndexOf(wanted, StringComparison.Ordinal));
    }
}
