using CsCheck;
using EolSequencer.Language.Diagnostics;
using EolSequencer.Language.Source;
using EolSequencer.Language.Yaml;
using EolSequencer.Model.Source;

namespace EolSequencer.Language.Tests.Yaml;

/// <summary>Whatever a file looks like, reading it ends with nodes or with a finding inside of the file, never with an exception.</summary>
public sealed class FuzzTests
{
    private const string Dense = """
        # Every form of YAML that files use.
        sequence: roller
        devices: { bus: vehicle-bus, rollers: roller-bench }   # roles
        steps:
          - step: ready
            caution: Rollers turn. Nobody ahead of the vehicle.
            ask: { en: "Lower the {side} window.", es: 'Baje la ventana.' }
            until: bus.position[side].percent <= 1
            takes: { window: .. 5 s, record-only: true }
          - group: doors
            each: { door: [front_left, front_right, rear] }
            steps:
              - { step: ajar, ask: "Open: {door}.", until: "bus.door_ajar[door]", within: 40 s }
              - step: note
                show: |
                  Two lines,
                    one deeper: #5
                compute: >-
                  imbalance(results.force["fl"].N,
                  results.force["fr"].N)
                expect: 35 ± 10 km/h   # folded °
          - together:
              left:
              - { step: a, wait: 2 s }
              right:
              - { step: b, when: vehicle.drive == "awd" && bus.x ? yes : no }
        """;

    private static readonly string[] Documents = [Dense, Dense.ReplaceLineEndings("\r\n"), .. RepositoryFiles.Named("*.yaml").Select(File.ReadAllText)];

    private static readonly string[] Morsels =
    [
        "'", "\"", "[", "]", "{", "}", ":", ": ", ",", "#", " #", "#x", "-", "- ", "? ", "!", "!!", "&a", "*a", "|", ">", "%", "@", "`", "\\", "\\q",
        "\t", "\n", "\r", "\r\n", "\n\n", "  ", "\u00A0", "\uFEFF", "\u2028", "\u0007", "---\n", "...\n", "%YAML 1.2\n", "<<: ", "~", "😀", "key:x\n", "\"\n", "\n'",
    ];

    private static readonly Gen<string> Mutated = Gen.Select(Gen.OneOf(Documents), Gen.Select(Gen.Int[0, 5], Gen.Int, Gen.Int, Gen.OneOf(Morsels)).Array[1, 4])
        .Select((document, changes) => changes.Aggregate(document, Changed));

    [Fact]
    public void Two_thousand_damaged_files_are_read_or_refused_at_a_place_inside() => Mutated.Sample(Reads, iter: 2_000);

    [Fact]
    public void Texts_of_nothing_but_signs_are_read_or_refused_at_a_place_inside() =>
        Gen.OneOf([.. Morsels, "a", "b c", "1", "\n  "]).Array[0, 30].Select(string.Concat).Sample(Reads, iter: 3_000);

    private static void Reads(string text)
    {
        // A morsel may have split a pair of surrogates, which no file can hold.
        var source = Texts.Source(System.Text.Encoding.UTF8.GetString(System.Text.Encoding.UTF8.GetBytes(text)));
        var report = new Report();
        var root = YamlReader.Read(source, report);
        Assert.True(root is not null || report.HasErrors, "a file was neither read nor refused");
        Assert.All(report.InOrder, finding => AssertInside(source, finding.Place));
        if (root is not null) AssertNode(source, root);
    }

    private static void AssertNode(SourceText source, YamlNode node)
    {
        AssertInside(source, node.Place);
        switch (node)
        {
            case YamlScalar scalar:
                for (var offset = 0; offset <= scalar.Text.Length; offset++) AssertInside(source, scalar.PlaceOf(offset, 1));
                if (scalar.CommentAfter is { } comment) AssertInside(source, comment.Place);
                break;
            case YamlList list:
                Assert.All(list.Items, item => AssertNode(source, item));
                break;
            case YamlMap map:
                Assert.All(map.Entries, entry =>
                {
                    AssertNode(source, entry.Key);
                    AssertNode(source, entry.Value);
                    Assert.Same(entry, map.Find(entry.Key.Text));
                });
                break;
        }
    }

    private static void AssertInside(SourceText source, SourcePlace place)
    {
        Assert.InRange(place.Line, 1, source.LineCount);
        Assert.InRange(place.Column, 1, source.Line(place.Line).Length + 2);
        Assert.InRange(place.EndLine, place.Line, source.LineCount);
        Assert.InRange(place.EndColumn, place.EndLine == place.Line ? place.Column : 1, source.Line(place.EndLine).Length + 2);
    }

    private static string Changed(string text, (int Kind, int At, int Length, string Morsel) change)
    {
        var at = (int)((uint)change.At % (uint)(text.Length + 1));
        var length = Math.Min((int)((uint)change.Length % 40), text.Length - at);
        return change.Kind switch
        {
            0 => text.Remove(at, length),
            1 => text.Insert(at, change.Morsel),
            2 => text.Remove(at, Math.Min(1, length)).Insert(at, change.Morsel),
            3 => text.Insert(at, text.Substring(at, length)),
            4 => text[..at],
            _ => text.Remove(at, length).Insert((int)((uint)change.Length % (uint)(text.Length - length + 1)), text.Substring(at, length)),
        };
    }
}
