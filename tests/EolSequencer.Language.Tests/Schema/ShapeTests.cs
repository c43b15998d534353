using EolSequencer.Language.Binding;
using EolSequencer.Language.Expressions;
using EolSequencer.Language.Loading;
using EolSequencer.Language.Schema;
using EolSequencer.Language.Syntax;
using EolSequencer.Language.Tests.Binding;

namespace EolSequencer.Language.Tests.Schema;

/// <summary>Schema and editor are made of the shapes that files are read by; a key without a description would be a hole in both.</summary>
public sealed class ShapeTests
{
    private static readonly string[] FreeOfForm = ["facts"];

    [Fact]
    public void Every_key_says_what_may_stand_behind_it_and_what_it_means()
    {
        var shapes = new HashSet<MapShape>();
        Walk(FileShapes.Any, shapes);
        Assert.True(shapes.Count > 40, $"only {shapes.Count} shapes are reached");
        foreach (var (shape, key) in shapes.SelectMany(shape => shape.AllKeys.Select(key => (shape, key))))
        {
            Assert.True(key.Meaning.Length > 0, $"'{key.Name}' of {shape.What} does not say what it means");
            Assert.True(key.Form is not ValueForm.Anything || FreeOfForm.Contains(key.Name), $"'{key.Name}' of {shape.What} does not say what may stand behind it");
        }
    }

    [Fact]
    public void The_schema_is_the_same_text_every_time()
    {
        var text = SchemaDocument.Text();
        Assert.Equal(text, SchemaDocument.Text());
        Assert.StartsWith("{\n  \"$schema\": \"https://json-schema.org/draft/2020-12/schema\"", text, StringComparison.Ordinal);
        Assert.DoesNotContain('\r', text);
    }

    [Fact]
    public void A_file_may_name_its_schema_in_its_first_line()
    {
        using var plant = new TestPlant();
        plant.Put("eol-schema.json", SchemaDocument.Text());
        foreach (var path in Directory.GetFiles(plant.Root, "*.yaml", SearchOption.AllDirectories))
        {
            File.WriteAllText(path, "# yaml-language-server: $schema=../eol-schema.json\n" + File.ReadAllText(path));
        }

        var found = PlantChecker.Check([plant.Root], ExpressionCache.None);
        Assert.DoesNotContain(found.Diagnostics, finding => !TestPlant.IsMeant(finding));
        Assert.Equal(Directory.GetFiles(TestPlant.Good, "*.yaml", SearchOption.AllDirectories).Length, found.Files);
    }

    private static void Walk(ValueForm form, HashSet<MapShape> shapes)
    {
        foreach (var one in form.Alternatives())
        {
            switch (one)
            {
                case ValueForm.List list: Walk(list.Item, shapes); break;
                case ValueForm.Names names: Walk(names.Value, shapes); break;
                case ValueForm.Map map: Walk(map.Shape, shapes); break;
                case ValueForm.Open open: Walk(open.Shape, shapes); break;
                case ValueForm.Cases cases: foreach (var (_, inner) in cases.All) Walk(inner, shapes); break;
            }
        }
    }

    private static void Walk(MapShape shape, HashSet<MapShape> shapes)
    {
        if (!shapes.Add(shape)) return;
        foreach (var key in shape.AllKeys) Walk(key.Form, shapes);
    }
}
