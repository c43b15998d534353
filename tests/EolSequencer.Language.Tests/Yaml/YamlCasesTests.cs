using System.Text;
using EolSequencer.Language.Diagnostics;
using EolSequencer.Language.Source;
using EolSequencer.Language.Syntax;
using EolSequencer.Language.Yaml;

namespace EolSequencer.Language.Tests.Yaml;

/// <summary>Ways in which files were misread elsewhere, each by the number under which it is listed.</summary>
public sealed class YamlCasesTests
{
    [Fact, Trait("case", "YML-01")]
    public void A_key_given_twice_is_named_with_both_lines()
    {
        var filler = string.Concat(Enumerable.Range(1, 9).Select(number => $"other_{number}: 1\n"));
        var finding = Texts.OnlyFinding($"max: 5.5\n{filler}max: 55\n");
        Assert.Equal(YamlCodes.DuplicateKey, finding.Code);
        Assert.Contains("'max'", finding.Found);
        Assert.Contains("line 11", finding.Found);
        Assert.Contains("line 1,", finding.Found);
    }

    [Fact, Trait("case", "YML-02")]
    public void A_merge_key_is_refused_with_its_line()
    {
        var (root, report) = Texts.Read("common: &c {retries: 2}\nstep:\n  <<: *c\n");
        var finding = Assert.Single(report.InOrder, one => one.Code == YamlCodes.MergeKey);
        Assert.Contains("line 3", finding.Found);
        Assert.Empty(Assert.IsType<YamlMap>(Assert.IsType<YamlMap>(root).Find("step")!.Value).Entries);
    }

    [Theory, Trait("case", "YML-03")]
    [InlineData("0010", "10", "0x0A")]
    [InlineData("0008", "8", "0x08")]
    [InlineData("010", "10", "0x0A")]
    [InlineData("00", "0", "0x00")]
    [InlineData("-007", "7", "0x07")]
    public void A_number_with_leading_zeros_is_refused(string written, string plain, string hex)
    {
        var report = new Report();
        Assert.Null(Texts.FirstScalar($"retries: {written}\n").AsWhole("'retries'", -1000, 1000, report));
        var finding = Assert.Single(report.InOrder);
        Assert.Equal(SyntaxCodes.LeadingZero, finding.Code);
        Assert.Contains($" {plain} ", finding.Hint);
        Assert.Contains(hex, finding.Hint);
    }

    [Fact, Trait("case", "YML-03")]
    public void A_byte_list_reads_hexadecimal_and_refuses_octal()
    {
        var report = new Report();
        var list = Assert.IsType<YamlList>(Assert.IsType<YamlMap>(Texts.ReadWell("bytes: [0x22, 0xF1, 010]\n")).Entries[0].Value);
        Assert.Equal([0x22, 0xF1, null], list.Items.Select(item => item.AsWhole("a byte", 0, 255, report)));
        Assert.Equal(21, Assert.Single(report.InOrder).Place.Column);
    }

    [Fact, Trait("case", "YML-03")]
    public void A_part_number_keeps_its_leading_zero() =>
        Assert.Equal("0731", Texts.FirstScalar("part: 0731\n").AsText("'part'", new Report())!.Text);

    [Theory, Trait("case", "YML-04")]
    [InlineData("1:30", "90 s")]
    [InlineData("12:30", "750 s")]
    [InlineData("1:30:00", "5400 s")]
    public void A_number_to_base_sixty_is_refused_as_number_and_as_duration(string written, string meant)
    {
        var report = new Report();
        var scalar = Texts.FirstScalar($"timeout: {written}\n");
        Assert.Null(scalar.AsWhole("'timeout'", 0, 100_000, report));
        Assert.Null(scalar.AsDuration("'timeout'", TimeSpan.Zero, TimeSpan.MaxValue, report));
        Assert.Equal(2, report.InOrder.Count);
        Assert.All(report.InOrder, one => Assert.Equal(SyntaxCodes.BaseSixty, one.Code));
        Assert.All(report.InOrder, one => Assert.Contains(meant, one.Hint));
    }

    [Fact, Trait("case", "YML-05")]
    public void An_empty_limit_is_no_limit_and_no_zero()
    {
        var (root, report) = Texts.Read("min: 4.5\nmax:\n");
        Assert.Equal("test.yaml:2:1: error YML020: the key 'max' has no value – write a value, or leave the key out", Assert.Single(report.InOrder).ToString());
        Assert.IsType<YamlRefused>(Assert.IsType<YamlMap>(root).Find("max")!.Value);
    }

    [Theory, Trait("case", "YML-05")]
    [InlineData("~")]
    [InlineData("null")]
    public void A_null_is_no_number_no_truth_and_no_text(string written)
    {
        var report = new Report();
        var scalar = Texts.FirstScalar($"max: {written}\n");
        Assert.Null(scalar.AsWhole("'max'", 0, 9, report));
        Assert.Null(scalar.AsYesNo("'max'", report));
        Assert.Null(scalar.AsText("'max'", report));
        Assert.Equal([SyntaxCodes.NotWhole, SyntaxCodes.NotYesNo, SyntaxCodes.NoNull], report.InOrder.Select(one => one.Code));
    }

    [Theory, Trait("case", "YML-06")]
    [InlineData("maxx")]
    [InlineData("Max")]
    public void A_misspelt_key_is_named_with_the_one_that_was_meant(string key)
    {
        var report = new Report();
        MapReader.Open(Texts.ReadWell($"min: 4.5\n{key}: 5.5\n"), new MapShape("a limit", ["min"], ["max"]), report);
        Assert.Equal($"test.yaml:2:1: error SYN001: a limit has no key '{key}' – did you mean 'max'?", Assert.Single(report.InOrder).ToString());
    }

    [Fact, Trait("case", "YML-07")]
    public void A_word_like_no_stays_a_text_where_a_text_is_wanted() =>
        Assert.Equal("NO", Texts.FirstScalar("market: NO\n").AsText("'market'", new Report())!.Text);

    [Theory, Trait("case", "YML-07")]
    [InlineData("on", "yes")]
    [InlineData("off", "no")]
    [InlineData("1", "yes")]
    [InlineData("0", "no")]
    [InlineData("NO", "no")]
    [InlineData("True", "yes")]
    [InlineData("y", "yes")]
    public void Only_four_words_are_truth_values(string written, string meant)
    {
        var report = new Report();
        Assert.Null(Texts.FirstScalar($"enabled: {written}\n").AsYesNo("'enabled'", report));
        var finding = Assert.Single(report.InOrder);
        Assert.Equal((SyntaxCodes.NotYesNo, 1, 10), (finding.Code, finding.Place.Line, finding.Place.Column));
        Assert.Equal($"write  {meant}", finding.Hint);
    }

    [Theory, Trait("case", "YML-07")]
    [InlineData("yes", true)]
    [InlineData("true", true)]
    [InlineData("no", false)]
    [InlineData("false", false)]
    public void The_four_words_are_read(string written, bool value) =>
        Assert.Equal(value, Texts.FirstScalar($"enabled: {written}\n").AsYesNo("'enabled'", new Report()));

    [Fact, Trait("case", "YML-08")]
    public void A_text_cut_by_a_hash_blocks_the_file() =>
        Assert.Equal(YamlCodes.CutByHash, Texts.OnlyFinding("text: Fit door #2 left\n").Code);

    [Fact, Trait("case", "YML-08")]
    public void A_colon_in_a_text_is_named_in_its_line()
    {
        var finding = Texts.OnlyFinding("first: 1\ntext: Check: lamp on\n");
        Assert.Equal((YamlCodes.ColonInText, 2), (finding.Code, finding.Place.Line));
        Assert.Contains("text: \"Check: lamp on\"", finding.Hint);
    }

    [Fact, Trait("case", "YML-09")]
    public void An_unclosed_text_is_named_where_it_began_and_where_reading_gave_up()
    {
        var document = new StringBuilder("# Prüfung: Straße, 車両, 😀\r\nsteps:\r\n");
        for (var step = 1; step <= 40; step++)
        {
            document.Append($"  - step: s{step}\r\n    title: Tür öffnen ° µ\r\n    within: 5 s\r\n");
            document.Append(step == 5 ? "    ask: 'Öffne die Tür.\r\n" : "    ask: 'Schließe die Tür.'\r\n");
        }

        var finding = Texts.OnlyFinding(document.ToString());
        Assert.Equal((YamlCodes.UnclosedQuote, 22, 10), (finding.Code, finding.Place.Line, finding.Place.Column));
        Assert.Contains("gave up in line 26", finding.Found);
        Assert.Contains("'Öffne die Tür.'", finding.Hint);
    }

    [Theory, Trait("case", "YML-09")]
    [InlineData("\n")]
    [InlineData("\r\n")]
    public void A_fault_of_meaning_carries_the_line_of_its_value(string lineEnd)
    {
        var report = new Report();
        var map = Assert.IsType<YamlMap>(Texts.ReadWell($"# ä{lineEnd}{lineEnd}title: ö{lineEnd}within: 5 fortnights{lineEnd}"));
        map.Find("within")!.Value.AsDuration("'within'", TimeSpan.Zero, TimeSpan.MaxValue, report);
        Assert.Equal((4, 11), (Assert.Single(report.InOrder).Place.Line, report.InOrder[0].Place.Column));
    }

    [Theory, Trait("case", "YML-10")]
    [InlineData("1.20")]
    [InlineData("007")]
    [InlineData("3E7")]
    [InlineData("1_000")]
    public void A_part_number_is_a_text_exactly_as_written(string written) =>
        Assert.Equal(written, Texts.FirstScalar($"part: {written}\n").AsText("'part'", new Report())!.Text);

    [Theory, Trait("case", "YML-11")]
    [InlineData("7")]
    [InlineData("0")]
    [InlineData("Stop")]
    public void A_word_outside_of_the_set_is_answered_with_the_set(string written)
    {
        var words = new Words<DayOfWeek>(("continue", DayOfWeek.Monday), ("stop", DayOfWeek.Tuesday), ("ask", DayOfWeek.Sunday));
        var report = new Report();
        Assert.Null(Texts.FirstScalar($"mode: {written}\n").AsWord("'mode'", words, report));
        var finding = Assert.Single(report.InOrder);
        Assert.Equal(SyntaxCodes.UnknownWord, finding.Code);
        Assert.Contains("'continue', 'stop' or 'ask'", finding.Hint);
    }

    [Fact, Trait("case", "YML-12")]
    public void Half_a_file_is_refused_and_the_whole_one_has_another_hash()
    {
        var whole = "steps:\n" + string.Concat(Enumerable.Range(1, 40).Select(step => $"  - {{ step: s{step}, ask: \"Step {step}.\" }}\n"));
        for (var length = whole.Length - 2; length > whole.Length - 30; length--)
        {
            var half = Texts.Source(whole[..length]);
            Assert.NotEqual(Texts.Source(whole).Sha256, half.Sha256);
            var report = new Report();
            YamlReader.Read(half, report);
            var endsWithinStep = !whole[..length].EndsWith('}') && whole[..length].LastIndexOf('{') > whole[..length].LastIndexOf('}');
            Assert.Equal(endsWithinStep, report.HasErrors);
        }

        Texts.ReadWell(whole);
    }

    [Fact]
    public void The_largest_file_that_is_read_comes_through()
    {
        const string line = "  A line of a very long instruction for the operator.\n";
        var lines = (SourceText.MostBytes - 100) / line.Length;
        var scalar = Texts.FirstScalar("show: |\n" + string.Concat(Enumerable.Repeat(line, lines)));
        Assert.Equal(lines * (line.Length - 2), scalar.Text.Length);
        Assert.Equal(lines + 1, scalar.PlaceOf(scalar.Text.Length - 2, 1).Line);
    }
}
