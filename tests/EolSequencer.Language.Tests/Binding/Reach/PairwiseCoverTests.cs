using CsCheck;
using EolSequencer.Language.Binding.Reach;

namespace EolSequencer.Language.Tests.Binding.Reach;

/// <summary>Of too many combinations to try all, a pairwise cover still meets every fault that two options make together.</summary>
public sealed class PairwiseCoverTests
{
    [Fact]
    public void Every_two_values_stand_together_in_a_row() =>
        Gen.Int[1, 5].Array[2, 8].Sample(sizes =>
        {
            var rows = PairwiseCover.Rows(sizes, static _ => false);
            Assert.All(Pairs(sizes), pair => Assert.Contains(rows, row => Holds(row, pair)));
            Assert.All(rows, row => Assert.DoesNotContain(PairwiseCover.Open, row));
            Assert.InRange(rows.Count, 1, sizes.Aggregate(1, (product, size) => product * size));
        }, iter: 300);

    /// <summary>A forbidden pair is proven against trying all combinations.</summary>
    [Fact]
    public void Only_what_can_be_built_is_a_row_and_all_pairs_that_can_be_built_are_there() =>
        Gen.Select(Gen.Int[2, 3].Array[3, 6], Gen.Int[0, 5], Gen.Int[0, 5], Gen.Int[0, 2], Gen.Int[0, 2]).Sample((sizes, first, second, one, other) =>
        {
            (first, second) = (first % sizes.Length, second % sizes.Length);
            bool Impossible(int[] row) => first != second && row[first] == one && row[second] == other || row[0] == 1 && row[^1] == 0;

            var rows = PairwiseCover.Rows(sizes, Impossible);

            Assert.DoesNotContain(rows, Impossible);
            var buildable = All(sizes).Where(row => !Impossible(row)).ToList();
            Assert.All(Pairs(sizes).Where(pair => buildable.Exists(row => Holds(row, pair))), pair => Assert.Contains(rows, row => Holds(row, pair)));
        }, iter: 300);

    /// <summary>Thirteen options of three values: the smallest known cover has 15 rows (J. Torres-Jimenez, covering array tables, CA(15;2,13,3)).</summary>
    [Fact]
    public void A_cover_is_small()
    {
        Assert.InRange(PairwiseCover.Rows([.. Enumerable.Repeat(3, 13)], static _ => false).Count, 15, 30);
        Assert.InRange(PairwiseCover.Rows([.. Enumerable.Repeat(2, 40)], static _ => false).Count, 8, 16);
    }

    private static IEnumerable<(int First, int One, int Second, int Other)> Pairs(int[] sizes) =>
        from first in Enumerable.Range(0, sizes.Length)
        from second in Enumerable.Range(first + 1, sizes.Length - first - 1)
        from one in Enumerable.Range(0, sizes[first])
        from other in Enumerable.Range(0, sizes[second])
        select (first, one, second, other);

    private static bool Holds(int[] row, (int First, int One, int Second, int Other) pair) => row[pair.First] == pair.One && row[pair.Second] == pair.Other;

    private static IEnumerable<int[]> All(int[] sizes)
    {
        for (var number = 0; number < sizes.Aggregate(1, (product, size) => product * size); number++)
        {
            var (row, rest) = (new int[sizes.Length], number);
            for (var at = 0; at < sizes.Length; at++) (row[at], rest) = (rest % sizes[at], rest / sizes[at]);
            yield return row;
        }
    }
}
