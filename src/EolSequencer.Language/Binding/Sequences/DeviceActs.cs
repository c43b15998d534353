using System.Collections.Immutable;
using EolSequencer.Language.Diagnostics;
using EolSequencer.Language.Expectations;
using EolSequencer.Language.Syntax;
using EolSequencer.Model.Devices;
using EolSequencer.Model.Sequences;
using EolSequencer.Model.Values;

namespace EolSequencer.Language.Binding.Sequences;

/// <summary>Binds what a device does: <c>set … to</c> and <c>do … with</c>. Null: already reported.</summary>
internal static class DeviceActs
{
    public static BoundAction? Set(MapReader keys, Scope scope)
    {
        if (keys.Text("set") is not { } text || ChannelReference.Action(ScalarPart.Whole(text), scope) is not { } found) return null;
        if (found.Action.To is not { } shape)
        {
            scope.Report.Add(SequenceCodes.NotSet, text.Place, $"'{found.Action.Name}' takes no value", $"write  do: {text.Text}");
            return null;
        }

        if (keys.Find("to") is not { } node || Operands.Read(node, "'to'", shape, scope.Operands, scope.Context) is not { } to) return null;
        CheckCaution(keys, "set", found.Action, to, scope);
        return new BoundAction(new StepAction.SetTo(found.Role, found.Action, found.Index, to), text.Place, found.Action.Returns);
    }

    public static BoundAction? Do(MapReader keys, Scope scope)
    {
        if (keys.Text("do") is not { } text || ChannelReference.Action(ScalarPart.Whole(text), scope) is not { } found) return null;
        if (found.Action.To is not null)
        {
            scope.Report.Add(SequenceCodes.NotDone, text.Place, $"'{found.Action.Name}' takes a value", $"write  set: {text.Text}  and  to: …");
            return null;
        }

        CheckCaution(keys, "do", found.Action, null, scope);
        return With(keys, found.Action, scope) is { } with
            ? new BoundAction(new StepAction.Do(found.Role, found.Action, found.Index, with), text.Place, found.Action.Returns)
            : null;
    }

    private static ImmutableArray<StepAction.Argument>? With(MapReader keys, ActionDescription action, Scope scope)
    {
        var map = keys.FreeMap("with");
        var isWhole = true;
        foreach (var (key, _) in map?.Entries ?? [])
        {
            if (action.Parameters.Any(parameter => parameter.Name == key.Text)) continue;
            var near = Nearest.Of(key.Text, action.Parameters.Select(parameter => parameter.Name));
            scope.Report.Add(SequenceCodes.UnknownParameter, key.Place, $"'{action.Name}' has no value {Shown.Quoted(key.Text)}", near is null ? null : $"did you mean '{near}'?");
            isWhole = false;
        }

        var arguments = ImmutableArray.CreateBuilder<StepAction.Argument>(action.Parameters.Length);
        foreach (var parameter in action.Parameters)
        {
            if (map?.Find(parameter.Name) is not { } entry)
            {
                scope.Report.Add(SequenceCodes.MissingParameter, keys.PlaceOf("do"), $"'{action.Name}' needs the value '{parameter.Name}', a {parameter.Shape}", $"add  with: {{ {parameter.Name}: … }}");
                isWhole = false;
            }
            else if (Operands.Read(entry.Value, $"'{parameter.Name}'", parameter.Shape, scope.Operands, scope.Context) is { } value)
            {
                arguments.Add(new StepAction.Argument(parameter.Name, value));
            }
            else
            {
                isWhole = false;
            }
        }

        return isWhole ? arguments.ToImmutable() : null;
    }

    // Switching an output off takes a danger away, unless something moves when it falls back.
    private static void CheckCaution(MapReader keys, string key, ActionDescription action, Operand? to, Scope scope)
    {
        if (scope.IsCautioned || NodeRules.SaysCaution(keys) || !(action.Moves || action.Energises || action.Heats)) return;
        if (to is Operand.Constant { Value: TruthValue { IsTrue: false } } && !action.Moves) return;
        var effects = new[] { (action.Moves, "moves"), (action.Energises, "energises"), (action.Heats, "heats") };
        var words = string.Join(" and ", effects.Where(effect => effect.Item1).Select(effect => effect.Item2));
        scope.Report.Add(SequenceCodes.CautionMissing, keys.PlaceOf(key), $"'{action.Name}' {words} something, and nobody is warned");
    }
}
