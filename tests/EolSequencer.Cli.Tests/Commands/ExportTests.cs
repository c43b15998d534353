using System.Text.Json;
using System.Text.Json.Nodes;
using EolSequencer.Cli.Tests.Kit;

namespace EolSequencer.Cli.Tests.Commands;

/// <summary>What other programs read from an export is what the record shows; and no slip on the command line costs a file.</summary>
public sealed class ExportTests : IDisposable
{
    private const string Run = "startup_1-000001";

    private readonly Eol _eol = new();

    public ExportTests() => Directory.CreateDirectory(_eol.Data);

    [Fact]
    public void JSON_Lines_say_what_show_says()
    {
        _eol.Startup("--inject", "lamp_open=tail_left");
        var file = Path.Combine(_eol.Data, "steps.jsonl");
        var export = Export("steps", "--rehearsals", "--out", file);

        Assert.True(export.Code == 0, export.ToString());
        var lines = File.ReadLines(file).Select(line => JsonNode.Parse(line)!.AsObject()).ToArray();
        Assert.All(lines, line => Assert.Equal((Run, "rehearsal"), ((string)line["run"]!, (string)line["mode"]!)));
        var shown = Shown();
        Assert.Contains(shown, step => step.StartsWith("fail", StringComparison.Ordinal));
        Assert.Equal(shown, lines.Where(line => (bool)line["last"]!).Select(line => Line(line)).Order());
    }

    [Fact]
    public void A_table_says_to_Python_what_show_says()
    {
        Assert.SkipUnless(Python.IsThere, Python.Missing);
        _eol.Startup("--inject", "lamp_open=tail_left");
        var file = Path.Combine(_eol.Data, "steps.csv");
        Assert.Equal(0, Export("steps", "--rehearsals", "--form", "csv", "--out", file).Code);

        var (code, output) = Python.Run(
            """
            import csv, json, sys
            with open(sys.argv[1], newline="", encoding="utf-8") as table:
                print(json.dumps(list(csv.DictReader(table, strict=True))))
            """,
            file);

        Assert.True(code == 0, output);
        var steps = JsonNode.Parse(output)!.AsArray().Where(row => (string)row!["last"]! == "true").GroupBy(row => (string)row!["step"]!).Select(rows =>
        {
            var step = rows.First()!.DeepClone().AsObject();
            step["criteria"] = new JsonArray([.. rows.Where(row => Text(row!, "verdict") is not null).Select(row => row!.DeepClone())]);
            return Line(step);
        });
        Assert.Equal(Shown(), steps.Order());
    }

    [Fact]
    public void A_run_has_a_line_on_standard_output_and_people_are_told_elsewhere()
    {
        _eol.Startup("--only", "rest");
        using var export = Eol.Start("export", "runs", "--rehearsals", "--data", _eol.Data);
        var line = JsonNode.Parse(export.StandardOutput.ReadToEnd())!;

        Assert.Equal((Run, "rehearsal", "pass"), ((string)line["run"]!, (string)line["mode"]!, (string)line["verdict"]!));
        Assert.Contains("1 line of 1 rehearsal written", export.StandardError.ReadToEnd(), StringComparison.Ordinal);
        Assert.Contains("0 lines of 0 production runs", Export("runs").Output, StringComparison.Ordinal);
    }

    [Fact]
    public void A_file_that_is_there_is_replaced_only_when_told_so()
    {
        _eol.Startup("--only", "rest");
        var file = Path.Combine(_eol.Data, "runs.csv");
        File.WriteAllText(file, "kept");

        Refused(Export("runs", "--rehearsals", "--out", file), "is there already");
        Assert.Equal("kept", File.ReadAllText(file));
        Assert.Equal(0, Export("runs", "--rehearsals", "--out", file, "--replace").Code);
        Assert.Contains(Run, File.ReadAllText(file), StringComparison.Ordinal);
        Assert.False(File.Exists(file + ".part"));
    }

    [Theory]
    [InlineData("is a folder", "--out", ".")]
    [InlineData("cannot be written", "--out", "no/such/folder/runs.csv")]
    [InlineData("cannot be written", "--out", "")]
    [InlineData("is no day", "--from", "yesterday")]
    [InlineData("is no day", "--to", "2026-02-30")]
    [InlineData("before they begin", "--from", "2026-03-02", "--to", "2026-03-01")]
    [InlineData("is no vehicle identification number", "--vin", "' OR 1=1 --")]
    [InlineData("--replace is about the file", "--replace")]
    [InlineData("xml", "--form", "xml")]
    public void A_slip_is_told(string mentions, params string[] arguments)
    {
        _eol.Startup("--only", "rest");
        Refused(Export(["runs", .. arguments]), mentions);
    }

    [Fact]
    public void A_folder_without_a_record_is_refused() => Refused(Export("runs"), "there is no record");

    public void Dispose() => _eol.Dispose();

    private Eol.Outcome Export(params string[] arguments) => Eol.Run(["export", .. arguments, "--data", _eol.Data]);

    private static void Refused(Eol.Outcome outcome, string mentions)
    {
        Assert.True(outcome.Code == 2, outcome.ToString());
        Assert.Contains(mentions, outcome.Output, StringComparison.Ordinal);
        Assert.DoesNotContain("   at ", outcome.Output, StringComparison.Ordinal);
    }

    private string[] Shown()
    {
        var shown = JsonNode.Parse(Eol.Run("show", Run, "--json", "--data", _eol.Data).Output)!;
        return [.. shown["steps"]!.AsArray().Select(step => Line(step!.AsObject())).Order()];
    }

    /// <summary>A step as one text: whatever both outputs have of it.</summary>
    private static string Line(JsonObject step)
    {
        string[] ofStep = ["measured", "counted", "step", "attempt", "startSeconds", "tookSeconds", "cause", "detail"];
        string[] ofCriterion = ["of", "value", "unit", "expected", "uncertainty", "verdict"];
        var criteria = step["criteria"]!.AsArray().Select(one => string.Join('|', ofCriterion.Select(field => Text(one!, field))));
        return string.Join('|', ofStep.Select(field => Text(step, field))) + " " + string.Join(' ', criteria);
    }

    /// <summary>A field; null when it is not there or, in a table, empty. Numbers as numbers, texts without the apostrophe that keeps them harmless.</summary>
    private static string? Text(JsonNode node, string field) => node[field] switch
    {
        null => null,
        var value when field.EndsWith("Seconds", StringComparison.Ordinal) || field == "attempt" => decimal.Parse(value.ToString(), System.Globalization.NumberStyles.Float, System.Globalization.CultureInfo.InvariantCulture).ToString("0.######", System.Globalization.CultureInfo.InvariantCulture),
        var value when value.GetValueKind() == JsonValueKind.String && (string)value! is var text => text.Length == 0 ? null : text[0] == '\'' ? text[1..] : text,
        var value => value.ToString(),
    };
}
