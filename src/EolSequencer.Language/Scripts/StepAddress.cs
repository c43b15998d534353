using System.Text.RegularExpressions;
using EolSequencer.Language.Syntax;
using EolSequencer.Language.Yaml;
using EolSequencer.Model.Ports;

namespace EolSequencer.Language.Scripts;

/// <summary>Which prompt the key of an answer stands for.</summary>
/// <param name="Text">The address as a script is asked for it.</param>
/// <param name="Step">The id of the step or group, without the mark behind it.</param>
/// <param name="Mark">The kind that its mark stands for; null: the step's own prompt.</param>
internal sealed partial record StepAddress(string Text, string Step, PromptKind? Mark)
{
    private const string Id = @"[A-Za-z][A-Za-z0-9_]*(\[[A-Za-z0-9_-]+(,[A-Za-z0-9_-]+)*\])?(\.[A-Za-z][A-Za-z0-9_]*(\[[A-Za-z0-9_-]+(,[A-Za-z0-9_-]+)*\])?)*";

    /// <summary>What the key of an answer looks like.</summary>
    public static ValueForm.Text KeyForm { get; } = new($"^{Id}[{OperatorScript.CautionMark}{OperatorScript.DecisionMark}]?$", Subject.None);

    private static readonly PromptKind[] OwnKinds =
        [PromptKind.Act, PromptKind.Confirm, PromptKind.Judge, PromptKind.Enter, PromptKind.Scan, PromptKind.Choose];

    /// <summary>The address of a key; null when it cannot be one.</summary>
    public static StepAddress? Of(YamlScalar key)
    {
        PromptKind? mark = key.Text switch
        {
            [.., OperatorScript.CautionMark] => PromptKind.Caution,
            [.., OperatorScript.DecisionMark] => PromptKind.Decide,
            _ => null,
        };
        var step = mark is null ? key.Text : key.Text[..^1];
        return Form().IsMatch(step) ? new StepAddress(key.Text, step, mark) : null;
    }

    /// <summary>Whether at least one kind of prompt at this address takes the answer.</summary>
    public bool Takes(Answer answer) => Mark is { } kind ? kind.Takes(answer) : OwnKinds.Any(own => own.Takes(answer));

    [GeneratedRegex(@"\A" + Id + @"\z", RegexOptions.CultureInvariant)]
    private static partial Regex Form();
}
