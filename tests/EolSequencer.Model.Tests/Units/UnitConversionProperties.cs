using CsCheck;
using EolSequencer.Model.Units;

namespace EolSequencer.Model.Tests.Units;

/// <summary>Random values between all pairs of units, against fractions of whole numbers.</summary>
public class UnitConversionProperties
{
    private static readonly (Unit From, Unit To)[] Pairs =
    [
        .. from one in UnitTable.All from other in UnitTable.All where one.Dimension == other.Dimension select (one, other),
    ];

    private static readonly Gen<(Unit From, Unit To)> AnyPair = Gen.Int[0, Pairs.Length - 1].Select(at => Pairs[at]);

    // Ten digits and up to four places: more than any instrument on a line has.
    private static readonly Gen<decimal> Numbers =
        Gen.Select(Gen.Long[-9_999_999_999, 9_999_999_999], Gen.Int[0, 4], (digits, places) => digits / (decimal)Math.Pow(10, places));

    [Fact]
    public void A_conversion_is_exact_whenever_a_decimal_can_hold_the_result() =>
        Gen.Select(AnyPair, Numbers).Sample((pair, number) =>
        {
            Assert.True(pair.From.TryConvert(number, pair.To, out var result));
            var exact = Exact(number, pair.From, pair.To);
            // Twelve places leave room for the whole digits of the largest result here.
            return exact.HasPlaces(12)
                ? ExactFraction.Of(result).Is(exact)
                : (ExactFraction.Of(result) - exact).Size <= 1e-24 * (1 + exact.Size);
        });

    [Fact]
    public void There_and_back_is_the_same_number_whenever_there_is_exact() =>
        Gen.Select(AnyPair, Numbers).Sample((pair, number) =>
        {
            Assert.True(pair.From.TryConvert(number, pair.To, out var there));
            Assert.True(pair.To.TryConvert(there, pair.From, out var back));
            return !Exact(number, pair.From, pair.To).HasPlaces(12) || back == number;
        });

    [Fact]
    public void Conversion_keeps_the_order() =>
        Gen.Select(AnyPair, Numbers, Numbers).Sample((pair, a, b) =>
        {
            Assert.True(pair.From.TryConvert(a, pair.To, out var x));
            Assert.True(pair.From.TryConvert(b, pair.To, out var y));
            return a.CompareTo(b) == x.CompareTo(y);
        });

    private static ExactFraction Exact(decimal number, Unit from, Unit to) =>
        (ExactFraction.Of(number) * ExactFraction.Of(from.Factor) + ExactFraction.Of(from.Offset) - ExactFraction.Of(to.Offset))
        / ExactFraction.Of(to.Factor);
}
