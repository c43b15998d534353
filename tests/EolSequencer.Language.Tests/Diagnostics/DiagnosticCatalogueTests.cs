using System.Text.RegularExpressions;
using EolSequencer.Language.Diagnostics;

namespace EolSequencer.Language.Tests.Diagnostics;

/// <summary>A code is looked up years later: it must stand for one thing and say what helps.</summary>
public sealed partial class DiagnosticCatalogueTests
{
    [Fact]
    public void No_code_is_declared_twice() =>
        Assert.Empty(DiagnosticCatalogue.All.GroupBy(code => code.Id).Where(same => same.Count() > 1).Select(same => same.Key));

    [Fact]
    public void Every_code_has_an_id_of_the_agreed_form_a_title_and_a_cure() => Assert.All(DiagnosticCatalogue.All, code =>
    {
        Assert.Matches(Form(), code.Id);
        Assert.True(char.IsUpper(code.Title[0]) && !code.Title.EndsWith('.'), $"{code.Id}: a title begins with a capital and has no full stop");
        Assert.True(char.IsLower(code.Cure[0]) && !code.Cure.EndsWith('.'), $"{code.Id}: a cure stands behind a dash, so it begins small and has no full stop");
    });

    [Fact]
    public void The_families_of_this_room_are_found() => Assert.Superset(
        new HashSet<string>(["YML", "FIL"]), DiagnosticCatalogue.All.Select(code => code.Id[..3]).ToHashSet());

    [GeneratedRegex("^[A-Z]{3}[0-9]{3}$")]
    private static partial Regex Form();
}
