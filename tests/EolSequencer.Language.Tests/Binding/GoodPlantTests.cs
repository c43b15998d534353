using EolSequencer.Language.Expressions;
using EolSequencer.Language.Loading;

namespace EolSequencer.Language.Tests.Binding;

/// <summary>Every kind of file and nearly every key is right somewhere; a checker that finds fault with them is wrong itself.</summary>
public sealed class GoodPlantTests
{
    [Fact]
    public void Nothing_is_found_in_the_good_plant()
    {
        using var plant = new TestPlant();

        var result = PlantChecker.Check([plant.Root], ExpressionCache.None);

        Assert.DoesNotContain(result.Diagnostics, finding => !TestPlant.IsMeant(finding));
        Assert.Equal(["rest", "by_weight", "twice", "front_only"], result.Diagnostics.Select(finding => finding.Found.Split("limits.")[1]));
        Assert.Equal(10, result.Files);
    }
}
