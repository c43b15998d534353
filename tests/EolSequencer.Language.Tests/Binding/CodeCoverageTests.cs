using EolSequencer.Language.Diagnostics;

namespace EolSequencer.Language.Tests.Binding;

/// <summary>A code that no test provokes may name something that is never found, or found in the wrong place.</summary>
public sealed class CodeCoverageTests
{
    private static readonly HashSet<string> Families = ["PLT", "NAM", "TYP", "VEH", "DEV", "STA", "ORD", "LIM", "SEQ", "SCR", "ADV", "CSV", "RES"];

    [Fact]
    public void Every_code_of_these_families_is_expected_by_a_test()
    {
        var tests = Path.GetDirectoryName(Path.GetDirectoryName(Path.GetDirectoryName(TestPlant.Good)))!;
        var texts = string.Join('\n', Directory.GetFiles(tests, "*", SearchOption.AllDirectories)
            .Where(path => path.EndsWith(".cs", StringComparison.Ordinal) || path.EndsWith(".yaml", StringComparison.Ordinal))
            .Select(File.ReadAllText));

        var forgotten = DiagnosticCatalogue.All
            .Where(code => Families.Contains(code.Id[..3]) && !texts.Contains(code.Id, StringComparison.Ordinal))
            .Select(code => $"{code.Id} {code.Title}");

        Assert.Empty(forgotten);
    }
}
