using EolSequencer.Language.Binding;
using EolSequencer.Language.Tests.Loading;

namespace EolSequencer.Language.Tests.Reference;

/// <summary>A key that the reference does not name is found by chance only; one that nobody shows is found to be broken by its first user.</summary>
public sealed class ReferenceKeyTests
{
    [Fact]
    public void Every_key_stands_in_the_language_reference()
    {
        var text = File.ReadAllText(RepositoryFiles.Named("README.md").Single());

        var forgotten = KeyWalk.All(FileShapes.Any)
            .Where(one => !text.Contains($"`{one.Key.Name}`", StringComparison.Ordinal) && !text.Contains($"{one.Key.Name}:", StringComparison.Ordinal))
            .Select(one => $"{one.Key.Name} of {one.Shape.What}");

        Assert.Empty(forgotten);
    }

    /// <summary>What counts is checked by other tests: the examples and the blocks of the reference, and the demo plant.</summary>
    [Fact]
    public void Every_key_is_used_in_an_example_that_loads()
    {
        var walk = new KeyWalk();
        foreach (var text in Examples().Concat(ReferenceText.Files()).Concat(Demo())) walk.Add(Texts.ReadWell(text));

        var unused = KeyWalk.All(FileShapes.Any).Where(one => !walk.Uses(one.Key)).Select(one => $"{one.Key.Name} of {one.Shape.What}").ToList();
        Assert.True(unused.Count == 0, string.Join('\n', unused));
    }

    private static IEnumerable<string> Examples() => ExamplePlaces.All.SelectMany(place => ExampleTrials.Of(place).Good);

    private static IEnumerable<string> Demo() => Directory.GetFiles(DemoPlant.Folder, "*.yaml", SearchOption.AllDirectories).Select(File.ReadAllText);
}
