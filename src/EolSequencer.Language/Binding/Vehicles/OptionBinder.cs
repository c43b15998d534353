using System.Collections.Immutable;
using EolSequencer.Language.Binding.Values;
using EolSequencer.Language.Diagnostics;
using EolSequencer.Language.Syntax;
using EolSequencer.Language.Yaml;
using EolSequencer.Model.Values;
using EolSequencer.Model.Vehicles;

namespace EolSequencer.Language.Binding.Vehicles;

/// <summary>Reads the options of a vehicle type: one of several words, or yes or no.</summary>
internal static class OptionBinder
{
    /// <summary>The keys of an option.</summary>
    public static MapShape Shape { get; } = new("an option", [], Shapes.Keys, Shapes.EitherOf);

    public static ImmutableArray<OptionDescription> Bind(YamlMap? map, Report report)
    {
        var options = ImmutableArray.CreateBuilder<OptionDescription>();
        foreach (var (key, value) in map?.Entries ?? [])
        {
            var name = Ids.Name(key, "an option", report);
            if (MapReader.Open(value, Shape, report) is not { } keys || Shapes.Read(keys) is not { } shape || name is null) continue;
            if (name == "vin")
            {
                report.Add(NameCodes.Reserved, key.Place, "no option can be 'vin', which expressions know as the identification number");
            }
            else if (shape.Kind != ValueKind.Truth && shape.Choices.IsEmpty)
            {
                report.Add(VehicleCodes.OptionType, value.Place, $"'{name}' is a {shape}");
            }
            else
            {
                options.Add(new OptionDescription(name, shape));
            }
        }

        return options.ToImmutable();
    }
}
