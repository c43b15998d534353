using EolSequencer.Records.SequenceControl;
using EolSequencer.Records.Tests.Samples;

namespace EolSequencer.Records.Tests.SequenceControl;

/// <summary>Whatever a sequence is made from, a change in it must not pass for what was approved.</summary>
public sealed class ContentHashTests
{
    [Fact]
    public void It_is_what_standard_tools_say() =>

        // printf 'a: 1\n' > a.yaml; printf 'b: 2\n' > b.yaml; sha256sum -z a.yaml b.yaml | sha256sum (GNU coreutils 9.1)
        Assert.Equal("58501f67a4aa31826566038c27cf5dd9472983f4a969b4acab1571078c515c4a", ContentHash.Of(SampleSequence.Sources(("b.yaml", "b: 2\n"), ("a.yaml", "a: 1\n"))));

    [Fact]
    public void Any_other_text_path_or_file_is_another_one()
    {
        (string, string)[][] all =
        [
            [("a.yaml", "a: 1\n"), ("b.yaml", "b: 2\n")],
            [("a.yaml", "a: 1\n"), ("b.yaml", "b: 3\n")],
            [("a.yaml", "a: 1\n"), ("c.yaml", "b: 2\n")],
            [("b.yaml", "a: 1\n"), ("a.yaml", "b: 2\n")],
            [("a.yaml", "a: 1\n")],
            [("a.yaml", "a: 1\n"), ("b.yaml", "b: 2\n"), ("d.yaml", "")],
            [],
        ];
        Assert.Equal(all.Length, all.Select(files => ContentHash.Of(SampleSequence.Sources(files))).Distinct().Count());
    }
}
