using CsCheck;
using EolSequencer.Language.Diagnostics;
using EolSequencer.Language.Editing;
using EolSequencer.Language.Expressions;
using EolSequencer.Language.Loading;
using EolSequencer.Language.Plants;
using EolSequencer.Language.Tests.Binding;

namespace EolSequencer.Language.Tests.Editing;

/// <summary>An editor is told what eol check would say of the same text; it only gets there with less work.</summary>
public sealed class EditorCheckTests
{
    private static readonly string[] Typed = ["", "x", "1", ".", " ", ":", "(", "\"", "\n", "}", "bus.brake"];

    [Theory]
    [MemberData(nameof(BadDocumentTests.Documents), MemberType = typeof(BadDocumentTests))]
    public void Every_bad_document_has_the_same_faults_in_a_window_as_on_disk(string document)
    {
        using var plant = new TestPlant();
        var path = plant.Replace(Path.Combine("bad", Path.GetFileName(document)), File.ReadAllText(Path.Combine(TestPlant.Bad, document)));
        var editor = new PlantEditor();
        editor.SetText(path, File.ReadAllText(path));
        for (var time = 0; time < 2; time++) Same(PlantChecker.Check([path], ExpressionCache.None).Diagnostics, editor.Check(path), path);
    }

    [Fact]
    public void After_any_edits_the_faults_are_those_of_the_text()
    {
        using var plant = new TestPlant();
        var path = plant.PathOf("sequences/startup.yaml");
        var lines = File.ReadAllText(path).Split('\n').Length;
        var edit = Gen.Select(Gen.Int[0, lines - 1], Gen.Int[0, 60], Gen.Int[0, 3], Gen.OneOf(Typed.Select(Gen.Const).ToArray()));
        edit.Array[1, 4].Sample(
            edits =>
            {
                var editor = new PlantEditor();
                editor.SetText(path, File.ReadAllText(Path.Combine(TestPlant.Good, "sequences", "startup.yaml")));
                editor.Check(path);
                foreach (var (line, column, length, text) in edits)
                {
                    editor.Change(path, new TextRange(new TextPosition(line, column), new TextPosition(line, column + length)), text);
                    editor.Check(path);
                }

                var found = editor.Check(path);
                var fresh = new PlantEditor();
                fresh.SetText(path, editor.TextOf(path)!);
                Same(fresh.Check(path), found, path);
            },
            iter: 12);
    }

    [Fact]
    public void A_fault_that_is_mended_is_gone_and_one_in_another_file_is_found_with_the_plant()
    {
        using var plant = new TestPlant();
        var (path, type) = (plant.PathOf("sequences/startup.yaml"), plant.PathOf("vehicle-types/teal.yaml"));
        var editor = new PlantEditor();
        editor.SetText(path, File.ReadAllText(path));
        var before = editor.CheckPlant(path, static () => true)!;
        Assert.DoesNotContain(before.SelectMany(group => group), one => one.Severity == Severity.Error);

        editor.SetText(type, File.ReadAllText(type).Replace("  rims:       { one-of: [steel, alloy] }", "  rims:       { one-of: [iron, alloy] }", StringComparison.Ordinal));
        Assert.Contains(editor.CheckPlant(path, static () => true)![path], one => one.Severity == Severity.Error);
        Assert.Contains(editor.Check(path), one => one.Severity == Severity.Error);

        editor.Close(type);
        Assert.DoesNotContain(editor.Check(path), one => one.Severity == Severity.Error);
        Assert.Null(editor.CheckPlant(path, static () => false));
    }

    [Fact]
    public void A_file_that_is_not_on_disk_yet_belongs_to_the_plant()
    {
        using var plant = new TestPlant();
        var path = plant.PathOf("sequences/new.yaml");
        var fragment = plant.PathOf("fragments/new.yaml");
        var editor = new PlantEditor();
        editor.SetText(fragment, "fragment: fresh\ndevices: { meter: supply-meter }\nsteps: [{ step: rest, read: meter.voltage, within: 1 s, expect: 1 .. 2 V }]\n");
        editor.SetText(path, "sequence: other\nrevision: 1\nvehicle-type: teal\nstation-kind: startup\ndevices: { meter: supply-meter }\nsteps: [{ group: g, use: fresh }]\n");
        Assert.DoesNotContain(editor.Check(path), one => one.Severity == Severity.Error);
        editor.Close(fragment);
        Assert.Contains(editor.Check(path), one => one.Code == PlantCodes.UnknownFile);
    }

    [Theory]
    [InlineData("a\nb\nc", 1, 0, 1, 1, "x", "a\nx\nc")]
    [InlineData("a\r\nb\r\nc", 1, 1, 2, 0, "", "a\r\nbc")]
    [InlineData("ä€𝄞z", 0, 2, 0, 4, "n", "ä€nz")]
    [InlineData("ab", 7, 7, 9, 9, "c", "abc")]
    [InlineData("ab\ncd", 0, 99, 1, 0, " ", "ab cd")]
    [InlineData("", 0, 0, 0, 0, "a\n", "a\n")]
    public void Changes_count_lines_and_UTF_16_units_from_zero(string text, int line, int column, int endLine, int endColumn, string with, string wanted)
    {
        var editor = new PlantEditor();
        editor.SetText("/x.yaml", text);
        editor.Change("/x.yaml", new TextRange(new TextPosition(line, column), new TextPosition(endLine, endColumn)), with);
        Assert.Equal(wanted, editor.TextOf("/x.yaml"));
    }

    [Fact]
    public void Places_convert_exactly()
    {
        using var plant = new TestPlant();
        var path = plant.PathOf("sequences/probe.yaml");
        var editor = new PlantEditor();
        editor.SetText(path, "sequence: probe\nrevision: 1\nvehicle-type: teal\nstation-kind: startup\ndevices: { meter: supply-meter }\ntitle: '𝄞 in front'\nsteps: [{ step: a, title: 𝄞, read: meter.volt, within: 1 s }]\n");
        var range = TextRange.Of(Assert.Single(editor.Check(path), one => one.Severity == Severity.Error).Place);
        Assert.Equal(new TextRange(new TextPosition(6, 42), new TextPosition(6, 46)), range);
    }

    private static void Same(IReadOnlyList<Diagnostic> wanted, IReadOnlyList<Diagnostic> found, string path) => Assert.Equal(
        wanted.Where(one => Path.GetFullPath(one.Place.File) == path).Select(one => one.ToString()).Order(StringComparer.Ordinal),
        found.Select(one => one.ToString()).Order(StringComparer.Ordinal));
}
