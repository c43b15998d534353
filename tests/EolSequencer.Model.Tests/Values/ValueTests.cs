using System.Collections.Immutable;
using EolSequencer.Model.Tests.Support;
using EolSequencer.Model.Units;
using EolSequencer.Model.Values;

namespace EolSequencer.Model.Tests.Values;

/// <summary>The canonical text of a value goes into hashed records, so it may differ nowhere and never.</summary>
public class ValueTests
{
    private static readonly Unit Ampere = UnitTable.Required("A");

    [Theory, MemberData(nameof(CultureScope.Names), MemberType = typeof(CultureScope))]
    public void Canonical_text_is_the_same_in_every_culture(string culture)
    {
        using var _ = new CultureScope(culture);
        Assert.Equal("1.60 A", new NumberValue(1.60m, Ampere).ToString());
        Assert.Equal("-1234567.5", new NumberValue(-1234567.5m, null).ToString());
        Assert.Equal("0.0000000001 A", new NumberValue(0.0000000001m, Ampere).ToString());
        Assert.Equal("INI", new TextValue("INI").ToString());
        Assert.Equal("yes", TruthValue.Of(true).ToString());
        Assert.Equal("no", TruthValue.Of(false).ToString());
        Assert.Equal("[P0101, P0420]", new ListValue(["P0101", "P0420"]).ToString());
        Assert.Equal("[]", new ListValue([]).ToString());
    }

    [Fact]
    public void Trailing_zeros_are_shown_and_do_not_matter_for_equality() =>
        Assert.Equal(new NumberValue(1.6m, Ampere), new NumberValue(1.60m, Ampere));

    [Fact]
    public void Another_unit_or_another_way_of_coming_is_another_value()
    {
        Assert.NotEqual(new NumberValue(1, Ampere), new NumberValue(1, UnitTable.Required("mA")));
        Assert.NotEqual(new NumberValue(1, Ampere), new NumberValue(1, Ampere, Inexact: true));
    }

    [Fact]
    public void Lists_are_equal_by_what_they_hold_in_order()
    {
        Assert.Equal(new ListValue(["a", "b"]), new ListValue(["a", "b"]));
        Assert.Equal(new ListValue(["a", "b"]).GetHashCode(), new ListValue(["a", "b"]).GetHashCode());
        Assert.NotEqual(new ListValue(["a", "b"]), new ListValue(["b", "a"]));
    }

    [Fact]
    public void There_are_two_truth_values() => Assert.Same(TruthValue.Yes, TruthValue.Of(true));

    [Fact]
    public void Shapes_are_equal_by_what_they_allow_and_read_as_a_person_would_say_it()
    {
        Assert.Equal(ValueShape.OneOf("steel", "alloy"), ValueShape.OneOf("steel", "alloy"));
        Assert.NotEqual(ValueShape.OneOf("steel", "alloy"), ValueShape.OneOf("steel"));
        Assert.NotEqual(ValueShape.Number(Ampere), ValueShape.Count);
        ImmutableArray<(ValueShape Shape, string Words)> table =
        [
            (ValueShape.Number(Ampere), "number in A"), (ValueShape.Count, "count"), (ValueShape.Text(17), "text of up to 17 characters"),
            (ValueShape.Text(), "text"), (ValueShape.OneOf("steel", "alloy"), "one of steel, alloy"), (ValueShape.Truth, "yes or no"),
            (ValueShape.List, "list"), (ValueShape.Time, "time"),
        ];
        Assert.All(table, row => Assert.Equal(row.Words, row.Shape.ToString()));
    }
}
