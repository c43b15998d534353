using EolSequencer.Language.Yaml;

namespace EolSequencer.Language.Binding.Advice;

/// <summary>
/// The names that a document uses, by their letters: words in expressions and references, and names in the braces of texts
/// for people. A word too many only keeps a finding back.
/// </summary>
internal sealed class NamesUsed
{
    private static readonly HashSet<string> Definitions = ["parameters", "devices", "words"];

    private static readonly HashSet<string> Texts = ["title", "ask", "judge", "enter", "scan", "choose", "caution", "show", "repair"];

    private readonly HashSet<string> _names = new(StringComparer.Ordinal);
    private readonly HashSet<string> _owners = new(StringComparer.Ordinal);

    private NamesUsed() { }

    public static NamesUsed In(YamlMap document)
    {
        var used = new NamesUsed();
        foreach (var entry in document.Entries)
        {
            if (!Definitions.Contains(entry.Key.Text)) used.Look(entry, isText: false);
        }

        return used;
    }

    /// <summary>True when a name stands by itself somewhere.</summary>
    public bool Holds(string name) => _names.Contains(name);

    /// <summary>True when something of a name is used: <c>meter.</c> with a name behind the point.</summary>
    public bool HoldsPartOf(string name) => _owners.Contains(name);

    private void Look(YamlEntry entry, bool isText) => Look(entry.Value, isText || Texts.Contains(entry.Key.Text));

    private void Look(YamlNode node, bool isText)
    {
        switch (node)
        {
            case YamlMap map:
                foreach (var entry in map.Entries) Look(entry, isText);
                break;
            case YamlList list:
                foreach (var item in list.Items) Look(item, isText);
                break;
            case YamlScalar scalar when isText:
                LookInBraces(scalar.Text);
                break;
            case YamlScalar scalar:
                LookAtWords(scalar.Text);
                break;
        }
    }

    private void LookInBraces(string text)
    {
        for (var open = text.IndexOf('{'); open >= 0; open = text.IndexOf('{', open + 1))
        {
            if (text.IndexOf('}', open) is var close and > 0) _names.Add(text[(open + 1)..close]);
        }
    }

    private void LookAtWords(string text)
    {
        _names.Add(text); // ids of files hold a hyphen
        for (var at = 0; at < text.Length;)
        {
            var start = at;
            while (at < text.Length && (char.IsAsciiLetterOrDigit(text[at]) || text[at] == '_')) at++;
            if (at == start)
            {
                at++;
                continue;
            }

            var word = text[start..at];
            _names.Add(word);
            if (at + 1 < text.Length && text[at] == '.' && char.IsAsciiLetter(text[at + 1])) _owners.Add(word);
        }
    }
}
