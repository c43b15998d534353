using CsCheck;
using EolSequencer.Model.Texts;

namespace EolSequencer.Model.Tests.Texts;

/// <summary>Guesses at what an author meant rest on this count of slips.</summary>
public class EditDistanceTests
{
    [Theory]
    [InlineData("", "abc", 3)]
    [InlineData("kitten", "sitting", 3)] // Wagner and Fischer's classic pair
    [InlineData("ab", "ba", 1)]
    [InlineData("ca", "abc", 3)] // 2 if a letter might be touched twice
    [InlineData("mA", "ma", 1)]
    public void Slips_are_counted(string left, string right, int slips) => Assert.Equal(slips, EditDistance.Between(left, right));

    [Fact]
    public void It_is_the_same_in_both_directions_and_zero_for_equal_words() =>
        Gen.Select(Gen.String[Gen.Char['a', 'd'], 0, 8], Gen.String[Gen.Char['a', 'd'], 0, 8]).Sample((left, right) =>
            EditDistance.Between(left, right) == EditDistance.Between(right, left) && EditDistance.Between(left, right) == 0 == (left == right));
}
