using System.Text;
using System.Text.RegularExpressions;
using EolSequencer.Language.Diagnostics;
using EolSequencer.Language.Expressions;
using EolSequencer.Language.Loading;
using EolSequencer.Language.Plants;

namespace EolSequencer.Language.Tests.Reference;

/// <summary>What people copy out of the reference must load: each of its YAML blocks is put into the demo plant and checked there.</summary>
public sealed partial class ReferenceBlockTests : IDisposable
{
    private readonly DemoCopy _plant = new();

    public void Dispose() => _plant.Dispose();

    [Theory]
    [MemberData(nameof(Lines))]
    public void A_block_of_the_reference_loads(int line)
    {
        var found = PlantChecker.Check([Put(ReferenceText.Block(line))], ExpressionCache.None).Diagnostics;

        Assert.DoesNotContain(found, finding => finding.Severity == Severity.Error);
    }

    public static TheoryData<int> Lines() => [.. ReferenceText.BlockLines];

    /// <summary>Where the block belongs: a file of its own in place of the one of its kind and id, steps of a sequence, or limits of the demo vehicle.</summary>
    private string Put(string block)
    {
        if (block.StartsWith("limits:", StringComparison.Ordinal))
        {
            var type = Path.Combine("vehicle-types", "orrin.yaml");
            return _plant.Write(type, Limits().Replace(_plant.Read(type), _ => block));
        }

        var file = ReferenceText.AsFile(block);
        var header = FileHeader.Of(Encoding.UTF8.GetBytes(file)) ?? throw new InvalidOperationException($"this is no file, no list of steps and no limits:\n{block}");
        if (header.Kind == FileKind.Plant) return _plant.Write("plant.yaml", file);
        _plant.Remove(header);
        return _plant.Write("odd.yaml", file);
    }

    [GeneratedRegex(@"^limits:\n(?:[ #].*\n|\n)+", RegexOptions.Multiline)]
    private static partial Regex Limits();
}
