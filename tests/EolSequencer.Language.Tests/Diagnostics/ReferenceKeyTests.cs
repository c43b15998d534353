using EolSequencer.Language.Binding;
using EolSequencer.Language.Syntax;

namespace EolSequencer.Language.Tests.Diagnostics;

/// <summary>A key that the reference does not name is found by chance only.</summary>
public sealed class ReferenceKeyTests
{
    [Fact]
    public void Every_key_stands_in_the_language_reference()
    {
        var text = File.ReadAllText(RepositoryFiles.Named("README.md").Single());
        var seen = new HashSet<MapShape>(ReferenceEqualityComparer.Instance);
        Walk(FileShapes.Any, seen);

        var forgotten = seen.SelectMany(shape => shape.Keys.Select(key => (shape.What, Key: key)))
            .Where(one => !text.Contains($"`{one.Key}`", StringComparison.Ordinal) && !text.Contains($"{one.Key}:", StringComparison.Ordinal))
            .Select(one => $"{one.Key} of {one.What}");

        Assert.Empty(forgotten);
    }

    private static void Walk(ValueForm form, HashSet<MapShape> seen)
    {
        switch (form)
        {
            case ValueForm.List list: Walk(list.Item, seen); break;
            case ValueForm.Names names: Walk(names.Value, seen); break;
            case ValueForm.Map map: Walk(map.Shape, seen); break;
            case ValueForm.Open open: Walk(open.Shape, seen); break;
            case ValueForm.Cases cases:
                foreach (var (_, one) in cases.All) Walk(one, seen);
                break;
            case ValueForm.Either or ValueForm.Described:
                foreach (var one in form.Alternatives()) Walk(one, seen);
                break;
        }
    }

    private static void Walk(MapShape shape, HashSet<MapShape> seen)
    {
        if (!seen.Add(shape)) return;
        foreach (var key in shape.AllKeys) Walk(key.Form, seen);
    }
}
