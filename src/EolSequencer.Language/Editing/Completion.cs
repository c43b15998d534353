using System.Text.RegularExpressions;
using EolSequencer.Language.Editing.Names;
using EolSequencer.Language.Editing.Outline;
using EolSequencer.Language.Expectations;
using EolSequencer.Language.Plants;
using EolSequencer.Language.Syntax;
using EolSequencer.Model.Units;

namespace EolSequencer.Language.Editing;

/// <summary>What could be written at a caret.</summary>
internal sealed partial class Completion
{
    private readonly Spot _spot;
    private readonly Func<int, int, TextRange> _range;
    private readonly List<Proposal> _proposals = [];

    private Completion(Spot spot, Func<int, int, TextRange> range)
    {
        _spot = spot;
        _range = range;
    }

    private Caret Caret => _spot.Caret;

    /// <param name="range">The range from one offset of the file to another.</param>
    public static IReadOnlyList<Proposal> At(Spot spot, Func<int, int, TextRange> range)
    {
        var completion = new Completion(spot, range);
        completion.Propose();
        return [.. completion._proposals.DistinctBy(one => (one.Text, one.Kind))];
    }

    private void Propose()
    {
        if (Caret.IsKey && !Caret.IsItem)
        {
            Keys(FormFinder.OfMap(Caret), Caret.Innermost.Map);
            return;
        }

        var form = FormFinder.OfValue(Caret);
        if (!Caret.IsItem)
        {
            Values(form.Alternatives());
            return;
        }

        Keys(form, null);
        Values(FormFinder.ItemsOf(form).Concat(form.Alternatives().Where(one => one is not ValueForm.List)));
    }

    private void Keys(ValueForm form, OutlineMap? map)
    {
        var known = FormFinder.KeysOf(form, map).ToList();
        foreach (var key in known.Where(key => map?.Entries.Exists(entry => entry.HasColon && entry.Key.Text == key.Name && entry.Key.Text != Caret.Text.Text) != true))
        {
            Whole($"{key.Name}: ", ProposalKind.Key, key.Meaning);
        }

        if (known.Count == 0) foreach (var thing in FreeNames()) Whole($"{thing.Name}: ", ProposalKind.Name, thing.Detail);
    }

    /// <summary>The names that a map with keys of its author's choice is about.</summary>
    private IEnumerable<Thing> FreeNames()
    {
        if (Caret.Around.Count < 2 || Caret.Around[^2] is not { Entry: { } owner, Map: var around }) return [];
        return owner.Key.Text switch
        {
            "options" when _spot.File.Kind == FileKind.Order => Things.Options(_spot),
            "facts" => Things.Facts(_spot),
            "steps" when _spot.File.Kind == FileKind.ExpectedResults => TestedThings.Steps(_spot),
            "with" when around.TextOf("use") is { } fragment => Things.Parameters(fragment, _spot),
            "with" when around.TextOf("do") is { } action => ActionNamed(action)?.Parts() ?? [],
            _ => [],
        };
    }

    private void Values(IEnumerable<ValueForm> forms)
    {
        foreach (var form in forms)
        {
            switch (form)
            {
                case ValueForm.Word words: foreach (var word in words.All) Whole(word, ProposalKind.Word, ""); break;
                case ValueForm.YesNo: foreach (var word in (string[])["yes", "no"]) Whole(word, ProposalKind.Word, ""); break;
                case ValueForm.Text text: Text(text.About); break;
                case ValueForm.Anything when Caret.Innermost.Entry is { } entry: foreach (var word in ValuesOf(entry.Key.Text)) Whole(word, ProposalKind.Word, ""); break;
            }
        }
    }

    private void Text(Subject subject)
    {
        switch (subject)
        {
            case Subject.None when Caret.IsItem && _spot.File.Kind == FileKind.ExpectedResults && Caret.Innermost.Entry is { Key.Text: "only" }:
                foreach (var thing in TestedThings.StepsAndGroups(_spot)) Whole(thing.Name, thing.Kind, thing.Detail);
                break;
            case Subject.None:
                if (Caret.Innermost.Entry is { } entry) foreach (var word in ValuesOf(entry.Key.Text)) Whole(word, ProposalKind.Word, "");
                break;
            case Subject.Value when !Caret.Before.Contains('('):
                foreach (var word in ValuesOf(Caret.Innermost.Entry!.Key.Text)) Whole(word, ProposalKind.Word, "");
                break;
            case Subject.Expectation when !Caret.Before.Contains('(') && !Caret.Before.StartsWith("limits.", StringComparison.Ordinal):
                Expectation();
                break;
            case var _ when Resolve.IsWholeName(subject):
                foreach (var thing in Things.Of(subject, _spot)) Whole(thing.Name, thing.Kind, thing.Detail);
                break;
            default:
                Named(subject);
                break;
        }
    }

    private void Expectation()
    {
        if (NumberInFront().IsMatch(Caret.Before))
        {
            var channel = Caret.Innermost.Map.TextOf("read") ?? Caret.Innermost.Map.TextOf("sample");
            var unit = channel is null ? null : ThingNamed(Subject.Channel, channel)?.Parts().Select(part => UnitTable.All.FirstOrDefault(one => one.ExpressionName == part.Name)).FirstOrDefault();
            foreach (var one in unit is null ? UnitTable.All : UnitTable.Of(unit.Dimension)) Word(one.Symbol, ProposalKind.Unit, one.Dimension.Word());
            return;
        }

        foreach (var word in FormWords.All) Whole(word, ProposalKind.Word, "");
        Whole("limits.", ProposalKind.Name, "a limit of the vehicle type");
    }

    private void Named(Subject subject)
    {
        var path = NamePath.At(Caret.Text.Text, Caret.Before.Length);
        var roots = Things.Of(subject, _spot).ToList();
        var at = path.Segments.Count == 0 ? null : Resolve.Follow(roots, path.Segments);
        if (path.Segments.Count > 0 && at is null) return;
        switch (path.Role)
        {
            case NamePathRole.Part:
                var isUnitWanted = subject is not (Subject.Channel or Subject.Action);
                foreach (var thing in at is null ? roots : at.Parts())
                {
                    if (isUnitWanted || path.Segments.Count < 2) Part(path, thing.Name, thing.Kind, thing.Detail);
                }

                break;
            case NamePathRole.Compared:
                foreach (var value in at!.Values) Part(path, value, ProposalKind.Word, "");
                break;
            case NamePathRole.QuotedIndex:
                foreach (var value in at!.Indexes) Part(path, value, ProposalKind.Word, "index");
                break;
            default:
                foreach (var value in at!.Indexes) Part(path, $"\"{value}\"", ProposalKind.Word, "index");
                foreach (var name in Things.Of(Subject.Expression, _spot).Where(thing => thing.Values.Any(at.Indexes.Contains))) Part(path, name.Name, name.Kind, name.Detail);
                break;
        }
    }

    /// <summary>The words that can stand behind a name: the values of an option, a parameter, an action.</summary>
    private IEnumerable<string> ValuesOf(string name)
    {
        var (map, _) = Caret.Innermost;
        if (name == "to" && map.TextOf("set") is { } action) return ActionNamed(action)?.Values ?? [];
        return FreeNames().FirstOrDefault(thing => thing.Name == name)?.Values ?? [];
    }

    private Thing? ActionNamed(string action) => ThingNamed(Subject.Action, action);

    private Thing? ThingNamed(Subject subject, string name) => Resolve.Follow(Things.Of(subject, _spot), name.Split('[')[0].Split('.'));

    private void Whole(string text, ProposalKind kind, string detail) =>
        _proposals.Add(new Proposal(text, kind, detail, _range(Caret.Text.Start, Caret.Text.End)));

    private void Part(NamePath path, string text, ProposalKind kind, string detail) =>
        _proposals.Add(new Proposal(text, kind, detail, _range(Caret.Text.Start + path.Start, Caret.Text.Start + path.End)));

    /// <summary>Takes the place of everything between the blanks around the caret.</summary>
    private void Word(string text, ProposalKind kind, string detail)
    {
        var start = Caret.Before.LastIndexOf(' ') + 1;
        var end = Caret.Text.Text.IndexOf(' ', Caret.Before.Length) is var blank and >= 0 ? blank : Caret.Text.Text.Length;
        _proposals.Add(new Proposal(text, kind, detail, _range(Caret.Text.Start + start, Caret.Text.Start + end)));
    }

    [GeneratedRegex(@"[0-9]\s+\S*$", RegexOptions.CultureInvariant)]
    private static partial Regex NumberInFront();
}
