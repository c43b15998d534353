using EolSequencer.Language.Yaml;

namespace EolSequencer.Language.Tests.Reference;

/// <summary>A place in which an example is tried: small files that are right, and where in them the keys of the example belong.</summary>
/// <param name="Frame">The file, with § where the keys stand.</param>
/// <param name="Bases">What else may stand there, as lines. An example is in place when it is in one of them: what a key can be used with depends on the others.</param>
internal sealed record ExamplePlace(string Frame, params string[] Bases)
{
    private const char Mark = '§';

    /// <summary>The file with an example in it: its keys take the place of the same keys, or come behind the others.</summary>
    public string With(ReferenceRow row, string example, int which)
    {
        var isWhole = example.StartsWith('{');
        List<(string Key, string Text)> all = isWhole || Bases[which].Length == 0 ? [] : [.. Written((YamlMap)Texts.ReadWell(Bases[which]))];
        foreach (var (key, text) in Entries(row, example))
        {
            if (all.FindIndex(one => one.Key == key) is var at and >= 0) all[at] = (key, text);
            else all.Add((key, text));
        }

        var before = Frame.IndexOf(Mark);
        var indent = new string(' ', before - (Frame.LastIndexOf('\n', before) + 1));
        return Frame.Replace($"{Mark}", string.Join('\n' + indent, all.Select(one => one.Text)), StringComparison.Ordinal);
    }

    // An item, or a name with what stands behind it, belongs behind the key of the row.
    private static IEnumerable<(string Key, string Text)> Entries(ReferenceRow row, string example)
    {
        if (example.StartsWith("- ", StringComparison.Ordinal)) return [(row.Keys[^1], $"{row.Keys[^1]}: [ {Quoted(example[2..])} ]")];
        var map = (YamlMap)Texts.ReadWell(example.StartsWith('{') ? example : example.Contains(", ", StringComparison.Ordinal) ? $"{{ {example} }}" : example);
        if (row.Keys.Count > 0 && !row.Keys.Contains(map.Entries[0].Key.Text)) return [(row.Keys[0], $"{row.Keys[0]}: {{ {example} }}")];
        return Written(map);
    }

    private static IEnumerable<(string Key, string Text)> Written(YamlMap map) => map.Entries.Select(entry => (entry.Key.Text, entry.Key.Source.Text[entry.Key.Start..entry.Value.End]));

    private static string Quoted(string item) => item.StartsWith('{') ? item : $"'{item}'";
}
