using EolSequencer.Language.Diagnostics;
using EolSequencer.Language.Expressions;
using EolSequencer.Language.Expressions.Compiling;
using EolSequencer.Language.Tests.Expressions.Kit;
using EolSequencer.Model.Values;

namespace EolSequencer.Language.Tests.Expressions;

/// <summary>Types are read off the text to save time; the compiler has to say the same of every one.</summary>
public class TypeReaderTests
{
    private static readonly string[] Numbers = ["1", "2.5", "bus.gear", "bus.vehicle_speed.km_h", "round(2.5)", "results.trim.or(1)", "note.Length", "(1 + 2)"];
    private static readonly string[] Speeds = ["bus.vehicle_speed", "rollers.speed", "max(bus.vehicle_speed, rollers.speed)", "results.slow.or(rollers.speed)", "(rollers.speed * 2)"];
    private static readonly string[] Others =
    [
        "note", "\"a\"", "$\"{bus.gear}\"", "vehicle.drive", "results.slow.verdict", "note.Trim()", "note.Substring(1)", "bus.stored_codes", "vehicle.tow",
        "bus.engine_speed", "travel", "results.slow.took", "note.Contains(\"a\")", "starts(note, note)", "bus.gear is 2 or 3", "run.verdict",
    ];

    public static TheoryData<string> Texts()
    {
        var texts = new TheoryData<string>();
        string[] all = [.. Numbers, .. Speeds, .. Others];
        foreach (var one in all)
        {
            texts.Add(one);
            texts.Add($"vehicle.tow ? {one} : {one}");
        }

        foreach (var one in Numbers.Concat(Speeds))
        {
            texts.Add($"-{one}");
            texts.Add($"abs({one})");
            foreach (var other in Numbers.Concat(Speeds))
            {
                foreach (var symbol in new[] { "+", "-", "*", "/", "%", "<", "==" }) texts.Add($"{one} {symbol} {other}");
                texts.Add($"min({one}, {other})");
                texts.Add($"vehicle.tow ? {one} : {other}");
            }
        }

        foreach (var one in Others)
        {
            texts.Add($"{one} + {one}");
            texts.Add($"{one} == {one}");
            texts.Add($"!{one}");
        }

        return texts;
    }

    [Fact]
    public void What_is_read_off_the_text_is_what_the_compiler_says()
    {
        var shapes = new ComputedShapes();
        var drafts = Texts().Select(row => Draw(row.Data, shapes)).OfType<Draft>().ToList();
        var round = new UnitRound(drafts);
        var told = 0;
        foreach (var function in round.Source.Functions)
        {
            var said = round.TypeOf(function);
            foreach (var draft in function.Drafts.Where(_ => said is not null))
            {
                Assert.True(draft.Type is null || draft.Type == said, $"{draft.Source.Text}: {draft.Type} was read, the compiler says {said}");
                if (draft.Type is not null) told++;
            }
        }

        Assert.InRange(told, 400, drafts.Count);
    }

    private static Draft? Draw(string text, ComputedShapes shapes)
    {
        var results = ResultScope.Start().Add("trim", ValueShape.Count, [], true).Add("slow", SmallPlant.Number("km/h"), [], false);
        var node = Tests.Texts.FirstScalar($"compute: '{text}'");
        var source = new ExpressionText(node, 0, SmallPlant.With(results) with { RunVerdict = true }, Wanted.Anything, new(text, node.Place));
        var draft = ExpressionParser.Parse(source, new Report());
        if (draft is null || !SyntaxGuard.Accept(draft)) return null;
        DraftWriter.Write(draft, shapes);
        return draft.HasFailed ? null : draft;
    }
}
