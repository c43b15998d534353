using System.Text;
using System.Text.RegularExpressions;
using EolSequencer.Language.Diagnostics;
using EolSequencer.Language.Expressions;
using EolSequencer.Language.Loading;
using EolSequencer.Language.Plants;
using EolSequencer.Language.Tests.Loading;

namespace EolSequencer.Language.Tests.Diagnostics;

/// <summary>What people copy out of the reference must load: each of its YAML blocks is put into the demo plant and checked there.</summary>
public sealed partial class ReferenceBlockTests : IDisposable
{
    private const string Steps = "sequence: odd\nrevision: 1\nvehicle-type: orrin\nstation-kind: startup\ndevices: { bus: vehicle-bus, meter: dc-meter, noise: sound-meter, line: line-signal }\ndefaults: { within: 60 s }\nsteps:\n";

    private readonly DirectoryInfo _folder = Directory.CreateTempSubdirectory("reference-");

    public ReferenceBlockTests()
    {
        foreach (var source in Directory.GetFiles(DemoPlant.Folder, "*", SearchOption.AllDirectories))
        {
            var copy = Path.Combine(_folder.FullName, Path.GetRelativePath(DemoPlant.Folder, source));
            Directory.CreateDirectory(Path.GetDirectoryName(copy)!);
            File.Copy(source, copy);
        }
    }

    public void Dispose() => _folder.Delete(recursive: true);

    [Theory]
    [MemberData(nameof(Lines))]
    public void A_block_of_the_reference_loads(int line)
    {
        var found = PlantChecker.Check([Put(Block(line))], ExpressionCache.None).Diagnostics;

        Assert.DoesNotContain(found, finding => finding.Severity == Severity.Error);
    }

    public static TheoryData<int> Lines() => [.. Reference().Index().Where(line => line.Item == "```yaml").Select(line => line.Index)];

    private static string[] Reference() => File.ReadAllLines(RepositoryFiles.Named("README.md").Single());

    private static string Block(int line) => string.Join('\n', Reference().Skip(line + 1).TakeWhile(text => text != "```")) + "\n";

    /// <summary>Where the block belongs: a file of its own in place of the one of its kind and id, steps of a sequence, or limits of the demo vehicle.</summary>
    private string Put(string block)
    {
        if (block.StartsWith("- ", StringComparison.Ordinal)) return Write("odd.yaml", Steps + string.Concat(block.Split('\n', StringSplitOptions.RemoveEmptyEntries).Select(text => $"  {text}\n")));
        if (block.StartsWith("limits:", StringComparison.Ordinal))
        {
            var type = Path.Combine("vehicle-types", "orrin.yaml");
            return Write(type, Limits().Replace(File.ReadAllText(Path.Combine(_folder.FullName, type)), _ => block));
        }

        var header = FileHeader.Of(Encoding.UTF8.GetBytes(block)) ?? throw new InvalidOperationException($"this is no file, no list of steps and no limits:\n{block}");
        if (header.Kind == FileKind.Plant) return Write("plant.yaml", block);
        foreach (var same in Directory.GetFiles(_folder.FullName, "*.yaml", SearchOption.AllDirectories).Where(path => FileHeader.Of(File.ReadAllBytes(path)) == header)) File.Delete(same);
        return Write("odd.yaml", block);
    }

    private string Write(string relative, string text)
    {
        var path = Path.Combine(_folder.FullName, relative);
        File.WriteAllText(path, text);
        return path;
    }

    [GeneratedRegex(@"^limits:\n(?:[ #].*\n|\n)+", RegexOptions.Multiline)]
    private static partial Regex Limits();
}
