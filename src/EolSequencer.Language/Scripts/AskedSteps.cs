using System.Collections.Immutable;
using EolSequencer.Language.Binding.Sequences;
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
        foreach (var path in sequences.SelectMany(StepPath.In)) asked.Add(path);
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

    private void Add(StepPath path)
    {
        if (path.Node.Caution is not null) Note(path, PromptKind.Caution);
        if (path.Node is not Step step) return;
        if (step.Action.Prompt is { } own) Note(path, own);
        if (step.OnFail == OnFail.Ask) Note(path, PromptKind.Decide);
    }

    private void Note(StepPath at, PromptKind kind)
    {
        foreach (var step in new[] { at.Id, at.Pattern })
        {
            var address = OperatorScript.AddressOf(step, kind);
            if (!_kinds.TryGetValue(address, out var kinds)) _kinds[address] = kinds = [];
            kinds.Add(kind);
        }
    }
}
