using System.Collections.Immutable;
using EolSequencer.Language.Diagnostics;
using EolSequencer.Language.Yaml;
using EolSequencer.Model.Ports;
using EolSequencer.Model.Sequences;

namespace EolSequencer.Language.Scripts;

/// <summary>What the sequences of a plant ask a person, by the addresses that a script may use.</summary>
internal sealed class AskedSteps
{
    private readonly Dictionary<string, HashSet<PromptKind>> _kinds = new(StringComparer.Ordinal);

    private AskedSteps() { }

    /// <summary>What some sequences ask, whichever vehicle it is.</summary>
    public static AskedSteps In(IEnumerable<CheckedSequence> sequences)
    {
        var asked = new AskedSteps();
        foreach (var sequence in sequences)
        {
            asked.Add([.. sequence.Prepare, .. sequence.Steps, .. sequence.Always, .. sequence.AfterVerdict], new Path("", ""));
        }

        return asked;
    }

    /// <summary>Warns of answers that no step asks for, or that stop the run because it does not take them.</summary>
    public void Check(StepAddress address, YamlScalar key, ImmutableArray<ScriptedAnswer> answers, Report report)
    {
        if (!_kinds.TryGetValue(address.Text, out var kinds))
        {
            var near = Nearest.Of(address.Text, _kinds.Keys);
            report.Add(ScriptCodes.UnknownStep, key.Place, $"no sequence of the plant asks {Shown.Quoted(address.Text)}", near is null ? null : $"did you mean '{near}'?");
        }
        else if (answers.Any(one => one.Answer is { } answer && !kinds.Any(kind => kind.Takes(answer))))
        {
            report.Add(ScriptCodes.Unfit, key.Place, $"an answer does not fit, '{address.Text}' wants {string.Join(" or ", kinds.Select(Wanted))}");
        }
    }

    /// <summary>The words an author writes for what a prompt takes.</summary>
    private static string Wanted(PromptKind kind) => kind switch
    {
        PromptKind.Act => "a device to see it: write  nothing,  stop  or  pass-over",
        PromptKind.Confirm or PromptKind.Caution => "confirm",
        PromptKind.Judge => "ok or not-ok",
        PromptKind.Decide => "again, go-on or stop",
        _ => "type",
    };

    /// <summary>Where in a sequence: the id with loop values and the id without.</summary>
    private readonly record struct Path(string Id, string Pattern)
    {
        public Path Inner(string own) => Id.Length == 0 ? new Path(own, own) : new Path($"{Id}.{own}", $"{Pattern}.{own}");
    }

    private void Add(ImmutableArray<Node> nodes, Path around)
    {
        foreach (var node in nodes)
        {
            switch (node)
            {
                case Step step: Add(step, around.Inner(step.Id)); break;
                case Group group: Add(group, around.Inner(group.Id)); break;
                case Together together:
                    foreach (var branch in together.Branches) Add(branch.Children, around);
                    break;
            }
        }
    }

    private void Add(Step step, Path at)
    {
        if (step.Action.Prompt is { } own) Note(at, own);
        if (step.Caution is not null) Note(at, PromptKind.Caution);
        if (step.OnFail == OnFail.Ask) Note(at, PromptKind.Decide);
    }

    private void Add(Group group, Path at)
    {
        foreach (var inside in Instances(group, at))
        {
            if (group.Caution is not null) Note(inside, PromptKind.Caution);
            Add(group.Children, inside);
            Add(group.Always, inside);
        }
    }

    private static IEnumerable<Path> Instances(Group group, Path at)
    {
        IEnumerable<string> values = [""];
        foreach (var loop in group.Each) values = values.SelectMany(outer => loop.Values.Select(value => outer.Length == 0 ? value.Value : $"{outer},{value.Value}"));
        return values.Select(value => value.Length == 0 ? at : at with { Id = $"{at.Id}[{value}]" });
    }

    private void Note(Path at, PromptKind kind)
    {
        foreach (var step in new[] { at.Id, at.Pattern })
        {
            var address = OperatorScript.AddressOf(step, kind);
            if (!_kinds.TryGetValue(address, out var kinds)) _kinds[address] = kinds = [];
            kinds.Add(kind);
        }
    }
}
