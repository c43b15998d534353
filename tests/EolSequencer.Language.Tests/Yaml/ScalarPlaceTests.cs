using System.Globalization;
using System.Text;
using CsCheck;
using EolSequencer.Language.Yaml;

namespace EolSequencer.Language.Tests.Yaml;

/// <summary>A fault inside an expression is shown in the author's file, so an offset in a text must lead back to its line and column.</summary>
public sealed class ScalarPlaceTests
{
    [Theory]
    [InlineData("key: a + b\n", "+", "1:8")]
    [InlineData("key: 'a + b'\n", "+", "1:9")]
    [InlineData("key: \"a + b\"\n", "+", "1:9")]
    [InlineData("key: 'it''s + b'\n", "+", "1:13")]
    [InlineData("key: \"a\\t\\u00e9 + b\"\n", "+", "1:17")]
    [InlineData("key: \"\\U0001F600 + b\"\n", "+", "1:18")]
    [InlineData("key: \"\\ud83d\\ude00 + b\"\n", "+", "1:20")]
    [InlineData("key: a\n  + b\n", "+", "2:3")]
    [InlineData("key: a\n\n\n    + b\n", "+", "4:5")]
    [InlineData("key: 'a\n  + b'\n", "+", "2:3")]
    [InlineData("key: \"a \\\n  + b\"\n", "+", "2:3")]
    [InlineData("key: |\n  a\n  + b\n", "+", "3:3")]
    [InlineData("key: |2\n   a\n  + b\n", "+", "3:3")]
    [InlineData("key: >-   # note\n  a\n  + b\n", "+", "3:3")]
    [InlineData("key: >\r\n  a\r\n  + b\r\n", "+", "3:3")]
    [InlineData("- { key: [ a, x + b ] }\n", "+", "1:17")]
    public void A_character_is_found_where_it_stands(string document, string part, string place)
    {
        var scalar = Scalars(Texts.ReadWell(document)).First(one => one.Text.Contains(part));
        var found = scalar.PlaceOf(scalar.Text.IndexOf(part, StringComparison.Ordinal), part.Length);
        Assert.Equal(place, $"{found.Line}:{found.Column}");
        Assert.Equal(part, scalar.Source.Text[scalar.Source.OffsetOf(found.Line, found.Column)..scalar.Source.OffsetOf(found.EndLine, found.EndColumn)]);
    }

    [Theory]
    [InlineData("key: a b", true)]
    [InlineData("key: 'a b'", true)]
    [InlineData("key: 'it''s'", false)]
    [InlineData("key: \"a\\\"b\"", false)]
    [InlineData("key: a\n  b", false)]
    [InlineData("key: |\n  a b", false)]
    [InlineData("key: |\n  a b\n", false)]
    public void Only_a_text_that_stands_in_the_file_letter_by_letter_is_verbatim(string document, bool isVerbatim) =>
        Assert.Equal(isVerbatim, Texts.FirstScalar(document).IsVerbatim);

    [Fact]
    public void The_content_lies_within_the_quotes()
    {
        var scalar = Texts.FirstScalar("key: 'a b'   # c\n");
        Assert.Equal((7, 10), (scalar.ContentPlace.Column, scalar.ContentPlace.EndColumn));
        Assert.Equal((6, 11), (scalar.Place.Column, scalar.Place.EndColumn));
    }

    [Fact]
    public void An_offset_beyond_the_text_means_its_end()
    {
        var scalar = Texts.FirstScalar("key: abc\n");
        Assert.Equal(9, scalar.PlaceOf(99, 1).Column);
        Assert.Equal(6, scalar.PlaceOf(-5, 1).Column);
        Assert.Equal(9, scalar.PlaceOf(1, 99).EndColumn);
    }

    [Fact]
    public void Every_letter_of_any_text_in_double_quotes_is_found_again() => Gen.String[Gen.Char["ab \"\\'é😀#:{}"], 1, 20]
        .Where(text => text.EnumerateRunes().All(rune => rune.Value != 0xFFFD))
        .Sample(text => Holds(text, "key: \"" + Escaped(text) + "\"\n"));

    [Fact]
    public void Every_letter_of_any_text_in_single_quotes_is_found_again() => Gen.String[Gen.Char["ab \"\\'é#:{}"], 1, 20]
        .Where(text => !string.IsNullOrWhiteSpace(text))
        .Sample(text => Holds(text, "key: '" + text.Replace("'", "''") + "'\n"));

    [Fact]
    public void Every_letter_of_any_folded_text_is_found_again() => Gen.String[Gen.Char['a', 'e'], 1, 4].Array[1, 8].Sample(words =>
    {
        foreach (var (header, joint) in new[] { ("", "\n  "), (">\n  ", "\n  "), ("|\n  ", "\n  "), ("'", "\n\n   ") })
        {
            var document = $"key: {header}{string.Join(joint, words)}{(header == "'" ? header : "")}\n";
            var scalar = Texts.FirstScalar(document);
            Finds(scalar);
        }
    });

    private static void Holds(string text, string document)
    {
        var scalar = Texts.FirstScalar(document);
        Assert.Equal(text, scalar.Text);
        Finds(scalar);
    }

    // What stands at the place of a letter is the letter, or an escape that means it.
    private static void Finds(YamlScalar scalar)
    {
        for (var offset = 0; offset < scalar.Text.Length; offset++)
        {
            if (scalar.Text[offset] is ' ' or '\n') continue;
            var place = scalar.PlaceOf(offset, 1);
            var written = scalar.Source.Text[scalar.Source.OffsetOf(place.Line, place.Column)..scalar.Source.OffsetOf(place.EndLine, place.EndColumn)];
            var meaning = written switch
            {
                ['\\', 'u', .. var digits] => (char)int.Parse(digits, NumberStyles.HexNumber, CultureInfo.InvariantCulture),
                ['\\', var letter] => letter,
                "''" => '\'',
                _ => Assert.Single(written),
            };
            Assert.Equal(scalar.Text[offset], meaning);
        }
    }

    private static string Escaped(string text)
    {
        var written = new StringBuilder();
        foreach (var letter in text)
        {
            if (letter is '"' or '\\') written.Append('\\').Append(letter);
            else if (letter is > '~') written.Append("\\u").Append(((int)letter).ToString("x4", CultureInfo.InvariantCulture));
            else written.Append(letter);
        }

        return written.ToString();
    }

    private static IEnumerable<YamlScalar> Scalars(YamlNode node) => node switch
    {
        YamlScalar scalar => [scalar],
        YamlList list => list.Items.SelectMany(Scalars),
        YamlMap map => map.Entries.SelectMany(entry => Scalars(entry.Value)),
        _ => [],
    };
}
