namespace EolSequencer.Language.Tests.Reference;

/// <summary>Whoever looks a key up copies its example: each one loads where its table says that it stands.</summary>
public sealed class ReferenceExampleTests
{
    [Fact]
    public void Every_table_of_keys_has_its_place() => Assert.Equal(ReferenceText.Rows().Select(row => row.Place).Distinct().Order(StringComparer.Ordinal), ExamplePlaces.All.Order(StringComparer.Ordinal));

    [Fact]
    public void Every_row_has_an_example() => Assert.Empty(ReferenceText.Rows().Where(row => row.Examples.Count == 0).Select(row => $"line {row.Line}"));

    [Theory]
    [MemberData(nameof(Places))]
    public void Every_example_loads(string place)
    {
        var (good, bad) = ExampleTrials.Of(place);

        Assert.True(bad.Count == 0, string.Join('\n', bad));
        Assert.NotEmpty(good);
    }

    public static TheoryData<string> Places() => [.. ExamplePlaces.All];
}
