using System.Collections.Immutable;
using EolSequencer.Language.Diagnostics;
using EolSequencer.Language.Syntax;
using EolSequencer.Language.Yaml;
using EolSequencer.Model.Sequences;

namespace EolSequencer.Language.Binding.Sequences;

/// <summary>Reads the values that a group gives to the parameters of its fragment.</summary>
internal static class FragmentArguments
{
    public static ImmutableArray<StepAction.Argument> Bind(MapReader keys, YamlScalar use, ImmutableArray<BoundParameter> parameters, Scope around)
    {
        var map = keys.FreeMap("with");
        foreach (var (key, _) in map?.Entries ?? [])
        {
            if (parameters.Any(parameter => parameter.Name.Text == key.Text)) continue;
            var near = Nearest.Of(key.Text, parameters.Select(parameter => parameter.Name.Text));
            around.Report.Add(SequenceCodes.UnknownParameter, key.Place, $"the fragment '{use.Text}' has no parameter {Shown.Quoted(key.Text)}", near is null ? null : $"did you mean '{near}'?");
        }

        var arguments = ImmutableArray.CreateBuilder<StepAction.Argument>(parameters.Length);
        foreach (var parameter in parameters)
        {
            if (ValueOf(parameter, map, use, around) is { } value) arguments.Add(new StepAction.Argument(parameter.Name.Text, value));
        }

        return arguments.ToImmutable();
    }

    private static Operand? ValueOf(BoundParameter parameter, YamlMap? map, YamlScalar use, Scope around)
    {
        var name = parameter.Name.Text;
        if (map?.Find(name) is { } entry)
        {
            var given = Operands.Read(entry.Value, $"'{name}'", parameter.Shape, around.Static, around.Context);
            if (given is Operand.Constant constant) parameter.Window?.Check(constant.Value, entry.Value, $"'{name}'", around.Report);
            return given;
        }

        if (parameter.HasDefault) return parameter.Default is { } standard ? new Operand.Constant(standard) : null;
        around.Report.Add(SequenceCodes.MissingParameter, use.Place, $"the fragment '{use.Text}' needs a value for '{name}', a {parameter.Shape}", $"add  with: {{ {name}: … }}");
        return null;
    }
}
