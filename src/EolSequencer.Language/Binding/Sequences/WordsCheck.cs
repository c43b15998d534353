using EolSequencer.Language.Binding.Plants;
using EolSequencer.Language.Diagnostics;
using EolSequencer.Language.Syntax;
using EolSequencer.Language.Yaml;
using EolSequencer.Model.Sequences;

namespace EolSequencer.Language.Binding.Sequences;

/// <summary>Words are for loop names and parameters and for values that these have; others would never be shown.</summary>
internal sealed class WordsCheck
{
    private readonly Dictionary<string, HashSet<string>> _known = new(StringComparer.Ordinal);
    private readonly Report _report;

    private WordsCheck(Report report) => _report = report;

    /// <param name="map">The words as they are written; null when there are none.</param>
    /// <param name="nodes">Everything bound beside them.</param>
    public static void Run(YamlMap? map, IEnumerable<BoundParameter> parameters, IEnumerable<Node> nodes, BindingContext context)
    {
        if (map is null) return;
        var report = context.Report;
        var check = new WordsCheck(report);
        foreach (var parameter in parameters) check.Know(parameter.Name.Text, parameter.Shape.Choices);
        foreach (var node in nodes) check.Know(node);
        foreach (var (name, values) in map.Entries)
        {
            check.Look(name, values as YamlMap);
            foreach (var (_, text) in (values as YamlMap)?.Entries ?? [])
            {
                if (text is YamlMap && text.AsTexts("the words", new Report()) is { } texts) LanguageCheck.Run(texts, context.Plant.Languages, report);
            }
        }
    }

    private void Know(string name, IEnumerable<string> values)
    {
        if (_known.TryGetValue(name, out var known)) known.UnionWith(values);
        else _known[name] = new HashSet<string>(values, StringComparer.Ordinal);
    }

    private void Know(Node node)
    {
        switch (node)
        {
            case Group group:
                foreach (var loop in group.Each) Know(loop.Name, loop.Values.Select(value => value.Value));
                if (group.Fragment is not null) break; // A fragment brings its own words.
                foreach (var child in group.Children.Concat(group.Always)) Know(child);
                break;
            case Together together:
                foreach (var child in together.Branches.SelectMany(branch => branch.Children)) Know(child);
                break;
        }
    }

    private void Look(YamlScalar name, YamlMap? values)
    {
        if (!_known.TryGetValue(name.Text, out var known))
        {
            Report(name, $"no loop name or parameter is called {Shown.Quoted(name.Text)}", _known.Keys);
            return;
        }

        foreach (var (value, _) in values?.Entries ?? [])
        {
            if (known.Count > 0 && !known.Contains(value.Text)) Report(value, $"'{name.Text}' never has the value {Shown.Quoted(value.Text)}", known);
        }
    }

    private void Report(YamlScalar at, string found, IEnumerable<string> known) => _report.Add(
        SequenceCodes.UnknownWords, at.Place, found, Nearest.Of(at.Text, known.Order(StringComparer.Ordinal)) is { } near ? $"did you mean '{near}'?" : null);
}
