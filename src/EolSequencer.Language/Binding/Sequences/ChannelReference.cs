using System.Collections.Immutable;
using EolSequencer.Language.Diagnostics;
using EolSequencer.Language.Expectations;
using EolSequencer.Model.Devices;
using EolSequencer.Model.Expressions;

namespace EolSequencer.Language.Binding.Sequences;

/// <summary>Reads what a step names of a device: <c>meter.lamp_current</c>, <c>bus.door_ajar[door]</c>, <c>bus.lamp["plate"]</c>.</summary>
internal static class ChannelReference
{
    /// <summary>A channel; null: already reported.</summary>
    public static (ChannelUse Use, ChannelDescription Channel)? Channel(ScalarPart part, Scope scope)
    {
        if (Split(part, scope) is not { } parts || Kind(parts.Role, scope) is not { } kind) return null;
        if (!kind.Channels.TryGetValue(parts.Name.Text, out var channel))
        {
            ReportUnknown(SequenceCodes.UnknownChannel, "channel", parts.Name, kind, kind.Channels.Keys, kind.Actions.ContainsKey(parts.Name.Text) ? "it is an action" : null, scope);
            return null;
        }

        if (!TryIndex(parts, channel.Indexes, scope, out var index)) return null;
        return (new ChannelUse(parts.Role.Text, channel.Name, index), channel);
    }

    /// <summary>An action; null: already reported.</summary>
    public static (string Role, ActionDescription Action, IndexUse? Index)? Action(ScalarPart part, Scope scope)
    {
        if (Split(part, scope) is not { } parts || Kind(parts.Role, scope) is not { } kind) return null;
        if (!kind.Actions.TryGetValue(parts.Name.Text, out var action))
        {
            ReportUnknown(SequenceCodes.UnknownAction, "action", parts.Name, kind, kind.Actions.Keys, kind.Channels.ContainsKey(parts.Name.Text) ? "it is a channel" : null, scope);
            return null;
        }

        if (!TryIndex(parts, action.Indexes, scope, out var index)) return null;
        if (index is not null || action.Indexes.IsEmpty) return (parts.Role.Text, action, index);
        scope.Report.Add(SequenceCodes.IndexMissing, part.Place, $"'{part}' does not say which of its indexes is meant", $"write  {part}[{action.Indexes[0].Value}]  or another of {Shown.OneOf(Values(action.Indexes))}");
        return null;
    }

    private readonly record struct Parts(ScalarPart Role, ScalarPart Name, ScalarPart? Index);

    private static Parts? Split(ScalarPart part, Scope scope)
    {
        var text = part.Span;
        var dot = text.IndexOf('.');
        var open = text.IndexOf('[');
        var isWhole = open < 0 || text[^1] == ']';
        var end = open < 0 ? text.Length : open;
        if (dot > 0 && dot < end && isWhole && !text[(dot + 1)..end].ContainsAny(" .()"))
        {
            return new Parts(part.Before(dot), part.From(dot + 1, end - dot - 1), open < 0 ? null : part.From(open + 1, text.Length - open - 2).Trim());
        }

        scope.Report.Add(SequenceCodes.BadReference, part.Place, $"{Shown.Quoted(part.Text)} names nothing of a device");
        return null;
    }

    private static DeviceKind? Kind(ScalarPart role, Scope scope)
    {
        if (scope.Roles.TryGetValue(role.Text, out var kind)) return kind;
        var near = Nearest.Of(role.Text, scope.Roles.Keys);
        scope.Report.Add(SequenceCodes.UnknownRole, role.Place, $"the sequence has no device {Shown.Quoted(role.Text)}", near is null ? $"its devices are {Shown.OneOf([.. scope.Roles.Keys])}" : $"did you mean '{near}'?");
        return null;
    }

    private static void ReportUnknown(
        DiagnosticCode code, string what, ScalarPart name, DeviceKind kind, IEnumerable<string> known, string? butIs, Scope scope)
    {
        var near = Nearest.Of(name.Text, known);
        scope.Report.Add(code, name.Place, $"the device kind '{kind.Id}' has no {what} {Shown.Quoted(name.Text)}", butIs ?? (near is null ? null : $"did you mean '{near}'?"));
    }

    private static bool TryIndex(Parts parts, ImmutableArray<IndexValue> indexes, Scope scope, out IndexUse? index)
    {
        index = null;
        if (parts.Index is not { } written) return true;
        if (indexes.IsEmpty)
        {
            scope.Report.Add(SequenceCodes.NoIndex, written.Place, $"'{parts.Role}.{parts.Name}' has no index", "leave the brackets out");
            return false;
        }

        index = IndexReference.Read(written, Values(indexes), $"'{parts.Role}.{parts.Name}'", scope);
        return index is not null;
    }

    private static ImmutableArray<string> Values(ImmutableArray<IndexValue> indexes) => [.. indexes.Select(one => one.Value)];
}
