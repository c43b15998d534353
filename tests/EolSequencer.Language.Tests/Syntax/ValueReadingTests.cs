using System.Globalization;
using CsCheck;
using EolSequencer.Language.Diagnostics;
using EolSequencer.Language.Syntax;
using EolSequencer.Language.Yaml;

namespace EolSequencer.Language.Tests.Syntax;

/// <summary>A value is what its author wrote, exactly, or it is refused; nothing is rounded, guessed or read by the station's culture.</summary>
public sealed class ValueReadingTests
{
    private readonly Report _report = new();

    [Theory]
    [InlineData("0", 0)]
    [InlineData("12", 12)]
    [InlineData("-40", -40)]
    [InlineData("\u221240", -40)]
    [InlineData("0x0A", 10)]
    [InlineData("0xFFFFFFFF", 4294967295)]
    [InlineData("9223372036854775807", long.MaxValue)]
    public void A_whole_number_is_decimal_or_hexadecimal(string written, long value)
    {
        Assert.Equal(value, Whole(written, long.MinValue, long.MaxValue));
        Assert.Empty(_report.InOrder);
    }

    [Theory]
    [InlineData("1.0", "SYN010")]
    [InlineData("1e3", "SYN010")]
    [InlineData("1_000", "SYN010")]
    [InlineData("1,000", "SYN010")]
    [InlineData("1 000", "SYN010")]
    [InlineData("+5", "SYN010")]
    [InlineData("0x", "SYN010")]
    [InlineData("0xG1", "SYN010")]
    [InlineData("0o17", "SYN010")]
    [InlineData("0xFFFFFFFFFFFFFFFF", "SYN010")]
    [InlineData("٣", "SYN010")]
    [InlineData("--", "SYN010")]
    [InlineData("007", "SYN011")]
    [InlineData("1:30", "SYN012")]
    [InlineData("9223372036854775808", "SYN013")]
    [InlineData("'12'", "SYN014")]
    [InlineData("[12]", "SYN003")]
    public void What_is_no_whole_number_is_refused(string written, string code)
    {
        Assert.Null(Assert.IsType<YamlMap>(Texts.Read($"key: {written}\n").Root).Entries[0].Value.AsWhole("'key'", long.MinValue, long.MaxValue, _report));
        Assert.Equal(code, Assert.Single(_report.InOrder).Code.Id);
    }

    [Theory]
    [InlineData(4, false)]
    [InlineData(5, true)]
    [InlineData(10, true)]
    [InlineData(11, false)]
    public void Both_ends_of_a_range_belong_to_it(long number, bool isIn)
    {
        Assert.Equal(isIn ? number : null, Whole(number.ToString(CultureInfo.InvariantCulture), 5, 10));
        if (!isIn) Assert.Contains("5 to 10", Assert.Single(_report.InOrder).Found);
    }

    [Theory]
    [InlineData("5 s", 50_000_000)]
    [InlineData("500 ms", 5_000_000)]
    [InlineData("2 min", 1_200_000_000)]
    [InlineData("0.5 s", 5_000_000)]
    [InlineData("1.5 min", 900_000_000)]
    [InlineData("0.0001 ms", 1)]
    [InlineData("0 s", 0)]
    [InlineData("5s", 50_000_000)]
    [InlineData("'5 s'", 50_000_000)]
    public void A_duration_is_exact_to_the_tick(string written, long ticks)
    {
        Assert.Equal(ticks, Duration(written)?.Ticks);
        Assert.Empty(_report.InOrder);
    }

    [Theory]
    [InlineData("5", "SYN017", "5 s")]
    [InlineData("1:30", "SYN012", "90 s")]
    [InlineData("5 V", "SYN016", "unit of")]
    [InlineData("5 sec", "SYN016", "write s")]
    [InlineData("5 S", "SYN016", "")]
    [InlineData("soon", "SYN016", "")]
    [InlineData("0,5 s", "SYN016", "comma")]
    [InlineData("05 s", "SYN016", "leading zeros")]
    [InlineData("1 000 ms", "SYN016", "thousands")]
    [InlineData("-5 s", "SYN013", "0 s to 3600 s")]
    [InlineData("2000 min", "SYN013", "0 s to 3600 s")]
    [InlineData("0.00001 ms", "SYN013", "100 ns")]
    [InlineData("99999999999999999999 min", "SYN013", "hundred years")]
    [InlineData("9999999999999999999999999999 min", "SYN013", "hundred years")]
    [InlineData("[5 s]", "SYN003", "a text")]
    public void What_is_no_duration_is_refused_with_what_to_write(string written, string code, string saying)
    {
        Assert.Null(Duration(written));
        var finding = Assert.Single(_report.InOrder);
        Assert.Equal(code, finding.Code.Id);
        Assert.Contains(saying, finding.Found + finding.Hint);
    }

    [Fact]
    public void Any_number_of_milliseconds_comes_back_exactly() => Gen.Long[0, 3_600_000].Sample(milliseconds =>
        Duration(string.Create(CultureInfo.InvariantCulture, $"{milliseconds} ms")) == TimeSpan.FromMilliseconds(milliseconds)
        && Duration(string.Create(CultureInfo.InvariantCulture, $"{milliseconds / 1000m} s")) == TimeSpan.FromMilliseconds(milliseconds));

    [Theory]
    [InlineData("de-DE")]
    [InlineData("sv-SE")]
    [InlineData("tr-TR")]
    [InlineData("fr-FR")]
    public void The_culture_of_the_station_changes_nothing(string culture)
    {
        var before = CultureInfo.CurrentCulture;
        CultureInfo.CurrentCulture = CultureInfo.GetCultureInfo(culture);
        try
        {
            Assert.Equal(TimeSpan.FromMilliseconds(1500), Duration("1.5 s"));
            Assert.Equal(-12, Whole("-12", -100, 100));
            Assert.Null(Duration("2000.5 min"));
            Assert.Contains("0 s to 3600 s", Assert.Single(_report.InOrder).Found);
            Assert.Equal("minimum", Nearest.Of("MINIMUM", ["minimum"]));
        }
        finally
        {
            CultureInfo.CurrentCulture = before;
        }
    }

    [Theory]
    [InlineData("'yes'", "SYN014")]
    [InlineData("Yes", "SYN015")]
    [InlineData("maybe", "SYN015")]
    [InlineData("[yes]", "SYN003")]
    public void A_truth_value_is_one_of_four_bare_words(string written, string code)
    {
        Assert.Null(Assert.IsType<YamlMap>(Texts.ReadWell($"key: {written}\n")).Entries[0].Value.AsYesNo("'key'", _report));
        Assert.Equal(code, Assert.Single(_report.InOrder).Code.Id);
    }

    [Fact]
    public void A_text_for_people_may_stand_in_several_languages()
    {
        var plain = TextsOf("Press the pedal.")!;
        Assert.Equal([("", "Press the pedal.")], plain.Versions.Select(one => (one.Language, one.Text.Text)));
        var both = TextsOf("{ en: Left, es: Izquierda }")!;
        Assert.Equal([("en", "Left"), ("es", "Izquierda")], both.Versions.Select(one => (one.Language, one.Text.Text)));
        Assert.Equal("Left", both.ToLocalText().For("de"));
        Assert.Empty(_report.InOrder);
    }

    [Theory]
    [InlineData("{ EN: Left }", "SYN019")]
    [InlineData("{ english: Left }", "SYN019")]
    [InlineData("{ en: '' }", "SYN005")]
    [InlineData("{ en: [a] }", "SYN003")]
    [InlineData("{}", "SYN005")]
    [InlineData("[Left, Right]", "SYN003")]
    [InlineData("~", "SYN006")]
    public void A_text_in_no_language_is_refused(string written, string code)
    {
        Assert.Null(TextsOf(written));
        Assert.Equal(code, Assert.Single(_report.InOrder).Code.Id);
    }

    [Fact]
    public void A_language_that_is_none_does_not_take_the_others_with_it() =>
        Assert.Equal(["en"], TextsOf("{ en: Left, xyz: Links }")!.Versions.Select(one => one.Language));

    [Fact]
    public void A_word_near_a_known_one_is_asked_back()
    {
        Assert.Null(Texts.FirstScalar("drive: adw\n").AsOneOf("'drive'", ["fwd", "awd"], _report));
        Assert.Equal("test.yaml:1:8: error SYN018: 'drive' cannot be 'adw' – did you mean 'awd'? Possible is 'fwd' or 'awd'", Assert.Single(_report.InOrder).ToString());
        Assert.Equal("awd", Texts.FirstScalar("drive: 'awd'\n").AsOneOf("'drive'", ["fwd", "awd"], _report));
    }

    private long? Whole(string written, long least, long most) => Texts.FirstScalar($"key: {written}\n").AsWhole("'key'", least, most, _report);

    private TimeSpan? Duration(string written) => Assert.IsType<YamlMap>(Texts.ReadWell($"key: {written}\n"))
        .Entries[0].Value.AsDuration("'key'", TimeSpan.Zero, TimeSpan.FromHours(1), _report);

    private LanguageTexts? TextsOf(string written) =>
        Assert.IsType<YamlMap>(Texts.ReadWell($"key: {written}\n")).Entries[0].Value.AsTexts("'key'", _report);
}
