using EolSequencer.Language.Editing.Names;
using EolSequencer.Language.Editing.Outline;
using EolSequencer.Language.Plants;
using EolSequencer.Language.Syntax;
using EolSequencer.Model.Units;

namespace EolSequencer.Language.Editing;

/// <summary>Finds what the word under a caret names.</summary>
internal static class Lookup
{
    /// <summary>The key under the caret; null when it is none that is known.</summary>
    public static MapKey? Key(Caret caret) => caret.IsKey && !caret.IsItem
        ? FormFinder.KeysOf(FormFinder.OfMap(caret), caret.Innermost.Map).FirstOrDefault(key => key.Name == caret.Text.Text)
        : null;

    /// <summary>What is named under the caret, and where the name stands in the file; null when it means nothing.</summary>
    public static (Thing Thing, int Start, int End)? Name(Spot spot)
    {
        var caret = spot.Caret;
        if (caret.IsKey && !caret.IsItem) return FreeKey(spot) is { } parameter ? (parameter, caret.Text.Start, caret.Text.End) : null;

        var form = FormFinder.OfValue(caret);
        var forms = caret.IsItem ? FormFinder.ItemsOf(form).Concat(form.Alternatives()) : form.Alternatives();
        return forms.OfType<ValueForm.Text>().Select(text => Named(text.About, spot)).FirstOrDefault(found => found is not null) ?? Unit(spot);
    }

    private static (Thing, int, int)? Named(Subject subject, Spot spot)
    {
        var text = spot.Caret.Text;
        if (Resolve.IsWholeName(subject)) return Resolve.Follow(Things.Of(subject, spot), [text.Text]) is { } whole ? (whole, text.Start, text.End) : null;

        var path = NamePath.At(text.Text, spot.Caret.Before.Length);
        if (path.Role != NamePathRole.Part || path.Start == path.End) return null;
        var found = Resolve.Follow(Things.Of(subject, spot), path.Segments.Append(text.Text[path.Start..path.End]));
        return found is null ? null : (found, text.Start + path.Start, text.Start + path.End);
    }

    private static (Thing, int, int)? Unit(Spot spot)
    {
        var (text, at) = (spot.Caret.Text.Text, spot.Caret.Before.Length);
        var start = at == 0 ? 0 : text.LastIndexOf(' ', at - 1) + 1;
        var end = text.IndexOf(' ', at) is var blank and >= 0 ? blank : text.Length;
        return end > start && UnitTable.Exact(text[start..end]) is { } unit ? (Things.Unit(unit), spot.Caret.Text.Start + start, spot.Caret.Text.Start + end) : null;
    }

    private static Thing? FreeKey(Spot spot) => spot.Caret.Around.Count < 2 ? null : spot.Caret.Around[^2] switch
    {
        { Entry.Key.Text: "with", Map: var around } when around.TextOf("use") is { } fragment => Things.Parameters(fragment, spot).FirstOrDefault(parameter => parameter.Name == spot.Caret.Text.Text),
        { Entry.Key.Text: "steps" } when spot.File.Kind == FileKind.ExpectedResults => TestedThings.Steps(spot).FirstOrDefault(step => step.Name == NamePath.WithoutBrackets(spot.Caret.Text.Text)),
        _ => null,
    };
}
