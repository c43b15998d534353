using EolSequencer.Language.Binding;
using EolSequencer.Language.Plants;
using EolSequencer.Language.Syntax;
using EolSequencer.Language.Yaml;

namespace EolSequencer.Language.Tests.Reference;

/// <summary>Which keys there are, and which of them documents use. A key that several shapes share is one key.</summary>
internal sealed class KeyWalk
{
    private readonly HashSet<(string Name, string Meaning)> _used = [];

    /// <summary>Every key that can be reached from a form, once, with the first shape that has it.</summary>
    public static IEnumerable<(MapShape Shape, MapKey Key)> All(ValueForm form)
    {
        var shapes = new HashSet<MapShape>();
        Reach(form, shapes);
        return shapes.SelectMany(shape => shape.AllKeys.Select(key => (shape, key))).DistinctBy(one => Identity(one.key));
    }

    public bool Uses(MapKey key) => _used.Contains(Identity(key));

    /// <summary>Notes the keys of a file that is right.</summary>
    public void Add(YamlNode root) => Add(FileShapes.Of(FileKinds.Of(((YamlMap)root).Entries[0].Key.Text)!.Value), (YamlMap)root);

    private void Add(ValueForm form, YamlNode node)
    {
        foreach (var one in form.Alternatives())
        {
            switch (one, node)
            {
                case (ValueForm.List list, YamlList items):
                    foreach (var item in items.Items) Add(list.Item, item);
                    break;
                case (ValueForm.Names names, YamlMap map):
                    foreach (var entry in map.Entries) Add(names.Value, entry.Value);
                    break;
                case (ValueForm.Map known, YamlMap map) when map.Entries.All(entry => known.Shape.Knows(entry.Key.Text)): Add(known.Shape, map); break;
                case (ValueForm.Open open, YamlMap map): Add(open.Shape, map); break;
                case (ValueForm.Cases cases, YamlMap map) when cases.Of(map) is { } key: Add(cases.All.First(inner => inner.Key == key).Form, map); break;
            }
        }
    }

    private void Add(MapShape shape, YamlMap map)
    {
        foreach (var entry in map.Entries)
        {
            if (shape.Find(entry.Key.Text) is not { } key) continue;
            _used.Add(Identity(key));
            Add(key.Form, entry.Value);
        }
    }

    private static void Reach(ValueForm form, HashSet<MapShape> shapes)
    {
        foreach (var one in form.Alternatives())
        {
            switch (one)
            {
                case ValueForm.List list: Reach(list.Item, shapes); break;
                case ValueForm.Names names: Reach(names.Value, shapes); break;
                case ValueForm.Map map: Reach(map.Shape, shapes); break;
                case ValueForm.Open open: Reach(open.Shape, shapes); break;
                case ValueForm.Cases cases: foreach (var (_, inner) in cases.All) Reach(inner, shapes); break;
            }
        }
    }

    private static void Reach(MapShape shape, HashSet<MapShape> shapes)
    {
        if (!shapes.Add(shape)) return;
        foreach (var key in shape.AllKeys) Reach(key.Form, shapes);
    }

    private static (string, string) Identity(MapKey key) => (key.Name, key.Meaning);
}
