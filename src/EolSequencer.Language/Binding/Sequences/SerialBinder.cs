using EolSequencer.Language.Binding.Values;
using EolSequencer.Language.Diagnostics;
using EolSequencer.Language.Syntax;
using EolSequencer.Model.Sequences;
using EolSequencer.Model.Values;

namespace EolSequencer.Language.Binding.Sequences;

/// <summary>Reads that the value of a step is the serial of a part.</summary>
internal static class SerialBinder
{
    private static readonly Words<bool> What = new(("serial", true));

    /// <summary>The keys it reads.</summary>
    public static MapKey[] Keys { get; } =
    [
        new("record", Forms.Word(What), "serial: the value is the serial of a part, kept with the vehicle, and may be on no other"),
        new("part", Ids.NameForm, "what the part is called; as the step's id if nothing is said"),
    ];

    public static SerialRule? Read(MapReader keys, Step step, BoundAction action, Report report)
    {
        var part = keys.Find("part") is { } node ? Ids.Name(node, "'part'", report) : null;
        if (!keys.Has("record"))
        {
            if (keys.Has("part")) report.Add(SequenceCodes.PartWithoutSerial, keys.PlaceOf("part"), $"'{step.Id}' records no serial");
            return null;
        }

        if (keys.Word("record", What) is null) return null;
        if (action is { Value.Kind: ValueKind.Text, Indexes.IsEmpty: true }) return new SerialRule(part);
        report.Add(SequenceCodes.SerialOfNoText, keys.PlaceOf("record"), action.Indexes.IsEmpty ? $"the value of '{step.Id}' is no text" : $"'{step.Id}' reads several values");
        return null;
    }
}
