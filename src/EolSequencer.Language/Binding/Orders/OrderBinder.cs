using System.Collections.Immutable;
using EolSequencer.Language.Binding.Reach;
using EolSequencer.Language.Binding.Values;
using EolSequencer.Language.Diagnostics;
using EolSequencer.Language.Syntax;
using EolSequencer.Language.Yaml;
using EolSequencer.Model.Expressions;
using EolSequencer.Model.Values;
using EolSequencer.Model.Vehicles;

namespace EolSequencer.Language.Binding.Orders;

/// <summary>Reads an order against its vehicle type, whose conditions are compiled.</summary>
internal sealed class OrderBinder(VehicleType type, Report report)
{
    /// <summary>The keys of the file.</summary>
    public static MapShape File { get; } = new(
        "an order",
        [
            new("order", new ValueForm.Text("^[A-Za-z0-9_./-]{1,64}$", Subject.None), "number of the order: letters, digits, - _ . /"),
            new("vin", Forms.Text, "identification number of the vehicle, 17 characters"),
            new("vehicle-type", Forms.Named(Subject.VehicleType), "id of the vehicle type"),
        ],
        [
            new("options", Forms.Names(Forms.Text, Forms.Text), "what this vehicle is fitted with: every option of its type"),
            new("facts", Forms.Names(Forms.Text, Forms.Anything), "what the vehicle type asks of an order beside the options"),
        ]);

    /// <summary>Where the vehicle type of an order stands; null: already reported.</summary>
    public static YamlScalar? TypeOf(YamlNode root, Report report) => MapReader.Open(root, File, report)?.Text("vehicle-type");

    /// <summary>The order; null: already reported.</summary>
    public Order? Bind(YamlNode root)
    {
        if (MapReader.Open(root, File, report) is not { } keys) return null;
        var id = Id(keys);
        var vin = VinOf(keys);
        if (Options(keys) is not { } options) return null;
        var facts = new FactReader(type, options, report).Read(keys);
        return id is null || vin is null || facts is null ? null : new Order(id, vin, type.Id, options, facts);
    }

    private string? Id(MapReader keys)
    {
        if (keys.Text("order") is not { } text) return null;
        if (text.Text.Length <= 64 && text.Text.All(letter => char.IsAsciiLetterOrDigit(letter) || letter is '-' or '_' or '.' or '/')) return text.Text;
        report.Add(OrderCodes.BadId, text.Place, $"{Shown.Quoted(text.Text)} cannot be the number of an order");
        return null;
    }

    private Vin? VinOf(MapReader keys)
    {
        if (keys.Text("vin") is not { } text) return null;
        var read = Vin.TryParse(text.Text, type.CheckDigit);
        if (read.Fault is { } fault) report.Add(OrderCodes.BadVin, text.Place, $"{Shown.Quoted(text.Text)}: {fault}");
        foreach (var warning in read.Warnings) report.Add(OrderCodes.DoubtfulVin, text.Place, $"{Shown.Quoted(text.Text)}: {warning}");
        return read.Vin;
    }

    private ImmutableSortedDictionary<string, Value>? Options(MapReader keys)
    {
        var map = keys.FreeMap("options");
        var values = ImmutableSortedDictionary.CreateBuilder<string, Value>(StringComparer.Ordinal);
        foreach (var (key, value) in map?.Entries ?? [])
        {
            if (type.Options.FirstOrDefault(option => option.Name == key.Text) is not { } option)
            {
                var near = Nearest.Of(key.Text, type.Options.Select(known => known.Name));
                report.Add(OrderCodes.UnknownOption, key.Place, $"the vehicle type '{type.Id}' has no option {Shown.Quoted(key.Text)}", near is null ? null : $"did you mean '{near}'?");
            }
            else if (WrittenValue.Read(value, $"'{key.Text}'", option.Shape, report) is { } read)
            {
                values[option.Name] = read;
            }
        }

        foreach (var option in type.Options)
        {
            if (map?.Find(option.Name) is null) report.Add(OrderCodes.MissingOption, keys.PlaceOf("options"), $"'{option.Name}' is not said", $"add  {option.Name}: …, which is {option.Shape}");
        }

        return values.Count == type.Options.Length && IsPossible(values.ToImmutable(), keys) ? values.ToImmutable() : null;
    }

    private bool IsPossible(ImmutableSortedDictionary<string, Value> options, MapReader keys)
    {
        var scope = new VehicleScope(options, Arguments.None);
        if (type.Impossible.FirstOrDefault(condition => condition.IsTrue(scope)) is not { } met) return true;
        report.Add(OrderCodes.Impossible, keys.PlaceOf("options"), $"nobody builds  {met.Text}  ({met.Place})");
        return false;
    }
}
