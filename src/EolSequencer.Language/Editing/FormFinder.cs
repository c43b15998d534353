using EolSequencer.Language.Binding;
using EolSequencer.Language.Editing.Outline;
using EolSequencer.Language.Plants;
using EolSequencer.Language.Syntax;

namespace EolSequencer.Language.Editing;

/// <summary>Finds what the shapes of files say about a place in the structure of one.</summary>
internal static class FormFinder
{
    /// <summary>The kind of a file; null when it does not begin with one.</summary>
    public static FileKind? KindOf(OutlineMap root) => root.Entries is [{ HasColon: true } first, ..] ? FileKinds.Of(first.Key.Text) : null;

    /// <summary>What may stand in the map around the caret.</summary>
    public static ValueForm OfMap(Caret caret)
    {
        var form = OfRoot(caret.Root);
        foreach (var (map, entry) in caret.Around.SkipLast(1)) form = Behind(form, map, entry!.Key.Text);
        return form;
    }

    /// <summary>What may stand behind the key whose value the caret is in.</summary>
    public static ValueForm OfValue(Caret caret) => Behind(OfMap(caret), caret.Innermost.Map, caret.Innermost.Entry!.Key.Text);

    /// <summary>The keys that a map of a form may have.</summary>
    public static IEnumerable<MapKey> KeysOf(ValueForm form, OutlineMap? map) => form.Alternatives().SelectMany(one => one switch
    {
        ValueForm.Map known => known.Shape.AllKeys,
        ValueForm.Open open => open.Shape.AllKeys,
        ValueForm.Cases cases => Decided(cases, map).SelectMany(inner => KeysOf(inner, map)),
        ValueForm.List list => KeysOf(list.Item, map),
        _ => [],
    }).DistinctBy(key => key.Name);

    // As long as no key decides, all of them may come.
    private static IEnumerable<ValueForm> Decided(ValueForm.Cases cases, OutlineMap? map)
    {
        foreach (var (key, form) in cases.All)
        {
            if (map?.Entries.Exists(entry => entry.HasColon && entry.Key.Text == key) == true) return [form];
        }

        return cases.All.Select(one => one.Form);
    }

    /// <summary>The form of items, where a form is a list; otherwise nothing.</summary>
    public static IEnumerable<ValueForm> ItemsOf(ValueForm form) => form.Alternatives().OfType<ValueForm.List>().SelectMany(list => list.Item.Alternatives());

    private static ValueForm OfRoot(OutlineMap root) => KindOf(root) is { } kind ? Forms.Map(FileShapes.Of(kind)) : FileShapes.Any;

    private static ValueForm Behind(ValueForm form, OutlineMap map, string key)
    {
        if (KeysOf(form, map).FirstOrDefault(known => known.Name == key) is { } found) return found.Form;
        var free = Free(form).ToList();
        return free.Count > 0 ? new ValueForm.Either([.. free.Select(names => names.Value)]) : Forms.Anything;
    }

    /// <summary>The maps with keys of their author's choice that a form can be.</summary>
    public static IEnumerable<ValueForm.Names> Free(ValueForm form) => form.Alternatives().SelectMany(one => one switch
    {
        ValueForm.Names names => [names],
        ValueForm.List list => Free(list.Item),
        _ => Enumerable.Empty<ValueForm.Names>(),
    });
}
