using EolSequencer.Language.Expressions;
using EolSequencer.Language.Loading;
using EolSequencer.Language.Tests.Diagnostics;

namespace EolSequencer.Language.Tests.Binding;

/// <summary>Each document under <c>Documents/bad</c> states under the spot what a check finds in it, and nothing else may be found.</summary>
public sealed class BadDocumentTests
{
    [Theory]
    [MemberData(nameof(Documents))]
    public void A_document_has_the_faults_it_states(string document)
    {
        var text = File.ReadAllText(Path.Combine(TestPlant.Bad, document));
        using var plant = new TestPlant();
        var path = plant.Replace(Path.Combine("bad", Path.GetFileName(document)), text);

        var found = PlantChecker.Check([path], ExpressionCache.None).Diagnostics;

        ExpectedDiagnostics.Hold([(path, text)], found);
    }

    public static TheoryData<string> Documents() =>
        [.. Directory.GetFiles(TestPlant.Bad, "*.yaml", SearchOption.AllDirectories).Select(path => Path.GetRelativePath(TestPlant.Bad, path)).Order(StringComparer.Ordinal)];
}
