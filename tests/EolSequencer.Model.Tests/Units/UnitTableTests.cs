using EolSequencer.Model.Units;
using static EolSequencer.Model.Tests.Support.Lookups;

namespace EolSequencer.Model.Tests.Units;

/// <summary>Every file, record and expression rests on this table, so its inner consistency is shown entry by entry.</summary>
public class UnitTableTests
{
    public static TheoryData<string> Symbols => [.. UnitTable.All.Select(unit => unit.Symbol)];

    [Fact]
    public void The_table_holds_as_many_units_as_the_outside_comparison_counts() => Assert.Equal(81, UnitTable.All.Length);

    [Theory, MemberData(nameof(Symbols))]
    public void A_symbol_and_each_other_spelling_find_the_same_instance(string symbol)
    {
        var unit = Known(symbol);
        Assert.Equal(symbol, unit.Symbol);
        Assert.All(unit.OtherSpellings, spelling => Assert.Same(unit, Known(spelling)));
    }

    [Fact]
    public void No_spelling_belongs_to_two_units()
    {
        var spellings = UnitTable.All.SelectMany(unit => unit.OtherSpellings.Prepend(unit.Symbol)).ToList();
        Assert.Equal(spellings.Count, spellings.Distinct(StringComparer.Ordinal).Count());
    }

    [Fact]
    public void Expression_names_are_unique_csharp_names()
    {
        var names = UnitTable.All.Select(unit => unit.ExpressionName).ToList();
        Assert.Equal(names.Count, names.Distinct(StringComparer.Ordinal).Count());
        Assert.All(names, name => Assert.Matches("^[A-Za-z][A-Za-z0-9_]*$", name));
        Assert.Empty(names.Intersect(["in", "is", "as", "do", "if", "min", "max", "mean", "median", "first", "last", "range", "count", "at", "or"]));
    }

    [Fact]
    public void Factors_are_positive_and_only_temperatures_have_an_offset()
    {
        Assert.All(UnitTable.All, unit => Assert.True(unit.Factor > 0, unit.Symbol));
        Assert.All(UnitTable.All.Where(unit => unit.Offset != 0), unit => Assert.Equal(Dimension.Temperature, unit.Dimension));
    }

    [Fact]
    public void Every_dimension_has_a_unit_and_a_word()
    {
        Assert.All(Enum.GetValues<Dimension>(), dimension => Assert.NotEmpty(UnitTable.Of(dimension)));
        Assert.All(Enum.GetValues<Dimension>(), dimension => Assert.Matches("^[a-z]+( [a-z]+)*$", dimension.Word()));
    }

    [Theory]
    [InlineData("%", "percent")]
    [InlineData("km/h", "km_h")]
    [InlineData("°C", "celsius")]
    [InlineData("N·m", "Nm")]
    [InlineData("m/s²", "m_s2")]
    [InlineData("1/min", "per_min")]
    [InlineData("rpm", "rpm")]
    [InlineData("A", "A")]
    [InlineData("in", "inch")]
    [InlineData("min", "minutes")]
    public void Expressions_take_numbers_by_these_names(string symbol, string name) => Assert.Equal(name, Known(symbol).ExpressionName);

    [Fact]
    public void Asking_for_a_unit_that_our_own_code_invents_is_a_broken_assumption() =>
        Assert.Throws<ArgumentException>(() => UnitTable.Required("furlong"));
}
