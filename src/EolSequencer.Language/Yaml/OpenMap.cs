using EolSequencer.Language.Diagnostics;
using EolSequencer.Language.Source;

namespace EolSequencer.Language.Yaml;

/// <summary>Pairs keys with values and looks for keys that stand twice or that are none.</summary>
internal sealed class OpenMap(SourceText source, int start, bool isFlow, Report report) : OpenNode(source, start, isFlow)
{
    private readonly List<YamlEntry> _entries = [];
    private readonly Dictionary<string, YamlScalar> _keys = new(StringComparer.Ordinal);
    private YamlNode? _key;

    // A text can have several commas. It grows until something else follows, then it is reported once.
    private (Diagnostic Finding, int End)? _cutByComma;

    public override char OpeningBracket => '{';

    protected override void Accept(YamlNode node)
    {
        if (_key is null)
        {
            _key = node;
            return;
        }

        if (_key is not YamlScalar { Text.Length: > 0 } key)
        {
            if (_key is not YamlRefused) report.Add(YamlCodes.KeyIsNoText, _key.Place, $"{_key.Kind} stands where a key is expected");
        }
        else if (node is YamlScalar { IsPlain: true, Text.Length: 0 })
        {
            AddWithoutValue(key);
        }
        else
        {
            AddEntry(key, node);
        }

        _key = null;
    }

    protected override YamlNode Build(int end)
    {
        MendComma();
        return new YamlMap(Source, Start, end, _entries);
    }

    private void MendComma()
    {
        if (_cutByComma is not { Finding: var finding, End: var end }) return;
        var text = (YamlScalar)_entries[^1].Value;
        report.Add(finding with { Hint = Quoting.Hint(Source, text.Start, end) });
        var whole = new YamlScalar(Source, text.Start, end, text.Text + Source.Text[text.End..end], ScalarStyle.Plain);
        _entries[^1] = _entries[^1] with { Value = whole };
        _cutByComma = null;
    }

    private void AddEntry(YamlScalar key, YamlNode value)
    {
        MendComma();
        if (key is { IsPlain: true, Text: "<<" })
        {
            report.Add(YamlCodes.MergeKey, key.Place, $"merge keys are not supported, line {key.Place.Line} has one");
        }
        else if (_keys.TryGetValue(key.Text, out var first))
        {
            report.Add(
                YamlCodes.DuplicateKey,
                key.Place,
                $"the key {Shown.Quoted(key.Text)} in line {key.Place.Line} already stands in line {first.Place.Line}, column {first.Place.Column}");
        }
        else
        {
            _keys.Add(key.Text, key);
            _entries.Add(new YamlEntry(key, value));
        }
    }

    private void AddWithoutValue(YamlScalar key)
    {
        var letters = Source.Text;
        var colon = key.End;
        while (colon < letters.Length && letters[colon] is ' ' or '\t') colon++;
        if (colon < letters.Length && letters[colon] == ':' && HashTextBehind(colon) is { } hash) AddHashText(key, hash);
        else if (colon < letters.Length && letters[colon] == ':') AddEmpty(key);
        else if (key is { IsPlain: true, IsVerbatim: true } && key.Text.IndexOf(':') is var glued and > 0) AddGlued(key, key.Start + glued);
        else if (key.IsPlain && _entries is [.., { Value: YamlScalar { IsPlain: true } text }]) JoinAcrossComma(text, key);
        else AddEmpty(key);
    }

    // "title: #5 seat" has no value for YAML.
    private int? HashTextBehind(int colon)
    {
        var rest = Source.Text.AsSpan(colon + 1);
        var blanks = rest.Length - rest.TrimStart(" \t").Length;
        return blanks > 0 && rest[blanks..] is ['#', not (' ' or '\t' or '\r' or '\n' or '#'), ..] ? colon + 1 + blanks : null;
    }

    private void AddHashText(YamlScalar key, int hash)
    {
        var end = TextExtent.EndOf(Source, hash, IsFlow);
        report.Add(
            YamlCodes.CutByHash,
            key.Place,
            $"the key {Shown.Quoted(key.Text)} has no value, because a text that begins with # is a comment",
            Quoting.Hint(Source, hash, end));
        AddEntry(key, new YamlScalar(Source, hash, end, Source.Text[hash..end], ScalarStyle.Plain));
    }

    private void AddEmpty(YamlScalar key)
    {
        report.Add(YamlCodes.NoValue, key.Place, $"the key {Shown.Quoted(key.Text)} has no value");
        AddEntry(key, new YamlRefused(Source, key.End, key.End));
    }

    private void AddGlued(YamlScalar key, int colon)
    {
        report.Add(
            YamlCodes.NoBlankAfterColon,
            Source.PlaceOf(colon, colon + 1),
            $"no blank follows this colon, so {Shown.Quoted(key.Text)} became a key without a value",
            Quoting.ColonHint(Source, colon));
        var (name, value) = (key.Text[..(colon - key.Start)], key.Text[(colon - key.Start + 1)..]);
        AddEntry(
            new YamlScalar(Source, key.Start, colon, name, ScalarStyle.Plain),
            value.Length == 0
                ? new YamlRefused(Source, key.End, key.End)
                : new YamlScalar(Source, colon + 1, key.End, value, ScalarStyle.Plain));
    }

    private void JoinAcrossComma(YamlScalar text, YamlScalar key)
    {
        var comma = Math.Max(text.End, Source.Text.IndexOf(',', text.End));
        var finding = _cutByComma?.Finding ?? new Diagnostic(
            YamlCodes.CutByComma,
            Source.PlaceOf(comma, comma + 1),
            $"the comma ends the text {Shown.Quoted(text.Text)}, so {Shown.Quoted(key.Text)} became a key without a value",
            YamlCodes.CutByComma.Cure);
        _cutByComma = (finding, key.End);
    }
}
