using EolSequencer.Language.Diagnostics;
using EolSequencer.Model.Devices;
using EolSequencer.Model.Expressions;
using EolSequencer.Model.Sequences;
using EolSequencer.Model.Units;
using EolSequencer.Model.Values;

namespace EolSequencer.Language.Expressions.Compiling;

/// <summary>Follows <c>trace.GROUP.DEVICE.CHANNEL</c> and writes the trace in its place; the features behind it are members of it.</summary>
internal sealed class TraceResolver(Draft draft, IndexReader indexes, ResultReader results)
{
    private static readonly Unit OneInAMinute = UnitTable.Required("1/min");

    public void Resolve(PathSyntax path)
    {
        if (results.FollowToCapture(path) is not { } group) return;
        if (Channel(path, group.Capture) is not { } channel) return;
        if (Code(path, draft.SlotOf(new TraceUse(group.Use, channel.Use)), channel.Description) is not { } code) return;
        draft.Edits.Replace(path.TakenSpan.Start, path.TakenSpan.End, code);
    }

    private (ChannelUse Use, ChannelDescription Description)? Channel(PathSyntax path, Capture capture)
    {
        var role = path.NextName!.Value.ValueText;
        path.Take();
        var kept = capture.Channels.Where(one => one.Channel.Role == role).ToList();
        var names = kept.Select(one => one.Description.Name).Distinct().ToList();
        if (path.NextName is not { } name)
        {
            draft.Fault(ExpressionCodes.NameIncomplete, path.TakenSpan, $"behind '{path.TakenText}' a point and a channel is due", $"there is {Shown.OneOf(names)}");
            return null;
        }

        if (kept.Find(one => one.Description.Name == name.ValueText) is not { Description: var channel })
        {
            draft.Fault(ExpressionCodes.UnknownTrace, name.Span, $"the group captures no '{role}.{name.ValueText}'",
                Nearest.Of(name.ValueText, names) is { } near ? $"did you mean '{near}'?" : $"it captures {Shown.OneOf([.. kept.Select(one => one.Channel.ToString())])}");
            return null;
        }

        path.Take();
        return indexes.TryOne(path, [.. channel.Indexes.Select(index => index.Value)], $"'{role}.{channel.Name}'", out var picked)
            ? (new ChannelUse(role, channel.Name, picked), channel)
            : null;
    }

    /// <summary>The code for a trace; numbers with a unit are quantities, until they are taken with one by name.</summary>
    private string? Code(PathSyntax path, int slot, ChannelDescription channel)
    {
        var what = $"the trace '{path.TakenText}'";
        var shape = channel.Shape;
        if (shape.Kind is not (ValueKind.Number or ValueKind.Truth or ValueKind.Time))
        {
            draft.Fault(ExpressionCodes.UnknownTrace, path.TakenSpan, $"{what} is one of {shape}, and only numbers and yes-no have features", "read the channel instead");
            return null;
        }

        var (noting, inexact) = draft.NotesInexact ? ("Noting", $", ref {CodeText.Inexact}") : ("Of", "");
        var (scope, time, frequency) = ($"{CodeText.Scope}, {slot}", CodeText.Type(Dimension.Time), CodeText.Type(Dimension.Frequency));
        draft.AskForTypes();
        if (shape.Kind == ValueKind.Truth)
        {
            UseTimes();
            return $"SwitchTraceOf<{time}, {frequency}>({scope})";
        }

        if ((shape.Unit ?? (shape.Kind == ValueKind.Time ? UnitTable.Second : null)) is not { } unit)
        {
            UseTimes();
            return $"NumberTrace{noting}<{time}, {frequency}>({scope}, null{inexact})";
        }

        if (path.NextName is { } name && UnitTable.Of(unit.Dimension).FirstOrDefault(one => one.ExpressionName == name.ValueText) is { } taken)
        {
            path.Take();
            draft.TakenUnits.Add(taken);
            UseTimes();
            return $"NumberTrace{noting}<{time}, {frequency}>({scope}, {CodeText.Field(taken)}{inexact})";
        }

        draft.UseQuantity(unit);
        UseTimes();
        draft.TakenUnits.Add(unit);
        return $"QuantityTrace{noting}<{CodeText.Type(unit.Dimension)}, {time}>({scope}, {CodeText.Field(unit)}{inexact})";
    }

    private void UseTimes()
    {
        draft.NamesTrace = true;
        draft.UseQuantity(UnitTable.Second);
        draft.UseQuantity(OneInAMinute);
    }
}
