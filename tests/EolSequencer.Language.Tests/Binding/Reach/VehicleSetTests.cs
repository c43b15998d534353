using CsCheck;
using EolSequencer.Language.Binding.Reach;

namespace EolSequencer.Language.Tests.Binding.Reach;

/// <summary>Sets of vehicles are bits; they must behave as sets do at any size, also across words.</summary>
public sealed class VehicleSetTests
{
    private static readonly Gen<(int Count, HashSet<int> Left, HashSet<int> Right)> Sets =
        from count in Gen.Int[1, 200]
        from left in Gen.Int[0, count - 1].HashSet[0, count]
        from right in Gen.Int[0, count - 1].HashSet[0, count]
        select (count, left, right);

    [Fact]
    public void Sets_join_meet_and_differ_as_sets_do() => Sets.Sample(sets =>
    {
        var (count, left, right) = sets;
        var (one, other) = (VehicleSet.Where(count, left.Contains), VehicleSet.Where(count, right.Contains));
        Assert.Equal(First(left.Intersect(right)), one.And(other).First);
        Assert.Equal(First(left.Union(right)), one.Or(other).First);
        Assert.Equal(First(left.Except(right)), one.Without(other).First);
        Assert.Equal(left.IsSubsetOf(right), one.Without(other).IsEmpty);
        Assert.True(VehicleSet.None(count).IsEmpty);
    });

    private static int? First(IEnumerable<int> numbers) => numbers.Order().Select(number => (int?)number).FirstOrDefault();
}
