using EolSequencer.Language.Diagnostics;
using EolSequencer.Language.Source;
using EolSequencer.Language.Syntax;
using EolSequencer.Language.Yaml;
using Snapshooter.Xunit3;

namespace EolSequencer.Language.Tests.Syntax;

/// <summary>What an author reads is part of the product: a changed message is seen in review.</summary>
public sealed class SyntaxMessageTests
{
    [Fact]
    public void Each_fault_of_a_value_says_what_was_found_and_what_to_write()
    {
        var report = new Report();
        Check("a map", node => MapReader.Open(node, new MapShape("a limit", ["min"], ["max"]), report), "a: 1", "maxx: 1\nmin: 2", "- a", "min:2", "min");
        Check("an action", node => MapReader.Open(node, new MapShape("a step", [], ["ask", "read"]), report)?.ExactlyOne(["ask", "read"], "action"), "ask: a\nread: b", "{}");
        Check("a text", node => node.AsText("'title'", report), "[a]", "{ a: b }", "''", "~");
        Check("a list", node => node.AsList("'steps'", report), "a", "a: b");
        Check("a number", node => node.AsWhole("'retry'", 0, 10, report), "11", "-1", "010", "1:30", "many", "'5'", "99999999999999999999", "[1]");
        Check("a truth value", node => node.AsYesNo("'edge'", report), "on", "0", "perhaps", "'no'");
        Check(
            "a duration",
            node => node.AsDuration("'within'", TimeSpan.FromMilliseconds(1), TimeSpan.FromMinutes(10), report),
            "5", "5 V", "5 sec", "5 fortnights", "0,5 s", "1:30", "0 s", "1 h", "11 min", "0.0000001 ms", "soon");
        Check("a word", node => node.AsOneOf("'on-fail'", ["continue", "stop", "ask"], report), "stopp", "7");
        Check("texts", node => node.AsTexts("'ask'", report), "{ english: Left }", "{ en: '' }", "{}", "[a]");
        Snapshot.Match(string.Join('\n', report.InOrder.Select(one => one.ToString())));

        void Check(string what, Action<YamlNode> read, params string[] documents)
        {
            foreach (var document in documents)
            {
                var name = $"{what}, {document.Replace("\n", " ⏎ ")}";
                var source = SourceText.TryDecode(name, System.Text.Encoding.UTF8.GetBytes(document), report)!;
                read(YamlReader.Read(source, report)!);
            }
        }
    }
}
