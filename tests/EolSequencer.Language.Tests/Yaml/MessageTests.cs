using System.Text;
using Snapshooter.Xunit3;

namespace EolSequencer.Language.Tests.Yaml;

/// <summary>What an author reads is part of the product: a changed message is seen in review.</summary>
public sealed class MessageTests
{
    [Fact]
    public void Each_trap_shows_the_line_with_quotes_put_in() => Snapshot.Match(Messages(
        "when: !bus.ignition\nwithin: 5 s\n",
        "when: !results.ok && bus.x\n",
        "- { step: a, only-if: !bus.ignition, read: bus.x }\n",
        "any: [ a, !b ]\n",
        "ask: Fit door #2 left\n",
        "ask: Fit door #2 left   # and the right one later\n",
        "expect: matches /a #b/\n",
        "expect: matches /a # b/\n",
        "ask: Press key #\n",
        "title: #5 seat\n",
        "x: { ask: Door #2, until: bus.x }\nb: 3\n",
        "among: [left, Door #2, right]\nb: 3\n",
        "- { step: a, ask: Open door, then close, until: bus.x }\n",
        "- { step: a, ask: Open door, close it, and wait, until: bus.x }\n",
        "- { step: a, ask: Drive 10,5 m, until: bus.x }\n",
        "- { compute: max(a, b), unit: N }\n",
        "kind:value\nother: d\n",
        "a: 1\nwithin:5 s\nb: 2\n",
        "- { step:ready, ask: b }\n",
        "ask: Press the pedal\n  within:5 s\n",
        "max:\nmin: 4\n",
        "x: { a: , b: 1 }\n",
        "x: { ask: \"a\", b }\n",
        "x: { until: bus.a[b], within: 5 s }\n",
        "x: { ask: Lower {side} now, within: 5 s }\n",
        "x: { compute: imbalance(x[\"fl\"].N, y), unit: '%' }\n",
        "x: { expect: matches /a{2}/, class: other }\n",
        "ask: {side} is lit\n",
        "ask: [a] b\n",
        "unit: %\n", "unit: @x\n", "unit: `x`\n", "until: > 5\n", "until: >= 5\n", "until: |x|\n",
        "x: { until: >= 5, within: 1 s }\n",
        "x: {a: !b, c: d}\n",
        "expect: - 5 .. 5 °C\n", "a: ? b\n", "a: , b\n", "a: } b\n", "a: -\n",
        "ask: 'Wait' then go\n", "when: \"x\" == y   # note\n", "ask: 'Don't press'\n", "ask: \"Press \"Start\" now\"\n",
        "a: \"x\": y\n", "x: { a: \"b\" c, d: e }\n", "a: \"b\"#c\n",
        "text: Check: lamp on\n", "x: { a: b: c, d: e }\n",
        "- step: a\n  ask: Check: lamp on # now\n"));

    [Fact]
    public void What_the_language_leaves_out_of_yaml_is_refused() => Snapshot.Match(Messages(
        "common: &c { retries: 2 }\nstep: { <<: *c }\n",
        "a: &x 1\nb: *x\n",
        "a: &x y b\n",
        "a: & b\n",
        "when: * b\n",
        "<<: { a: 1 }\n",
        "a: !!str 5\n",
        "a: !<tag:x> y\n",
        "x: !k [a]\n",
        "x: !!map\n  a: b\n",
        "a: 1\nb: 2\n  \na: 3\n",
        "x: { a: 1, b: 2, a: 3 }\n",
        "a: 1\n---\nb: 2\n",
        "a: 1\n...\nb: 2\n",
        "%YAML 1.1\n---\na: 1\n",
        "%x\n",
        "? [a, b]\n: c\n",
        "{a: b}: c\n",
        ": b\n",
        "",
        "# only a comment\n",
        "a: \u0007b\n",
        "a: x\u2028y\n",
        "a: \u202Eb\n",
        "\ta: b\n", "a:\n\tb: 1\n", "a: b\tc\n", "a: \"b\tc\"\n"));

    [Fact]
    public void A_file_that_cannot_be_read_to_its_end_says_where_and_why() => Snapshot.Match(Messages(
        "a: [1, 2\nb: 3\n", "a: [1, 2", "a: {b: 1\nc: 2\n", "a: {b: [1, 2}\n", "a: { b: 1\n  c: 2 }\n", "x: { a: b}}\n", "a: [b, , c]\n",
        "a: 'x\nb: 1\n", "a: \"x\nb: 1\nc: d\n", "x:\n  - a: 'Press\n    until: x\n    b: 'q'\n", "x:\n  - { a: \"Press, b: c }\n  - { d: \"e\" }\n",
        "a: \"Press\n   within: 5 s\n   \"\n",
        "a: \"\\q\"\n", "a: \"C:\\data\\x41\"\n", "a: \"\\x4\"\n",
        "a: b\n  c: d\n", " a: b\nc: d\n", "a:\n  b: 1\n c: 2\n", "- step: a\n  b: 1\n - step: c\n", "a: 1\nb\nc: 2\n", "a: 1\n- b\n", "- a\nb: 1\n",
        "a: b\n   # not\n   c\n", "- step\n  ask: x\n",
        "a: >-\n\n   x\n  y\n", "a: |0\n x\n"));

    private static string Messages(params string[] documents)
    {
        var shown = new StringBuilder();
        foreach (var document in documents)
        {
            foreach (var line in document.Replace("\t", "→").TrimEnd('\n').Split('\n')) shown.Append("    ").Append(line).Append('\n');
            var findings = Texts.Read(document).Report.InOrder;
            if (findings.Count == 0) shown.Append("nothing\n");
            foreach (var finding in findings) shown.Append(finding).Append('\n');
            shown.Append('\n');
        }

        return shown.ToString();
    }
}
