using System.Collections.Immutable;
using EolSequencer.Language.Binding.Values;
using EolSequencer.Language.Diagnostics;
using EolSequencer.Language.Expressions;
using EolSequencer.Language.Syntax;
using EolSequencer.Language.Yaml;
using EolSequencer.Model.Vehicles;

namespace EolSequencer.Language.Binding.Vehicles;

/// <summary>Reads the control units of a vehicle type and where they answer.</summary>
internal static class ControlUnitBinder
{
    private const long MostCanId = 0x1FFFFFFF;

    private static readonly MapShape CanShape = new(
        "the CAN address of a control unit",
        [
            new("request", Forms.Whole(0, MostCanId), "identifier of what is sent to it (ISO 15765-2, normal addressing)"),
            new("response", Forms.Whole(0, MostCanId), "identifier of what it answers"),
        ],
        []);

    /// <summary>The keys of a control unit.</summary>
    public static MapShape UnitShape { get; } = new(
        "a control unit",
        [new("can", Forms.Map(CanShape), "identifiers of the diagnostic connection")],
        [
            new("doip", Forms.Whole(0, 0xFFFF), "logical address (ISO 13400-2)"),
            new("when", Forms.Expression, "vehicles that have it, by their options"),
        ]);

    /// <summary>The names alone, before anything else of the type is known.</summary>
    public static ImmutableArray<string> NamesOf(YamlMap? map) => map is null ? [] : [.. map.Entries.Select(entry => entry.Key.Text)];

    /// <param name="names">What <c>when</c> may name.</param>
    public static ImmutableArray<ControlUnit> Bind(YamlMap? map, ExpressionNames names, ExpressionBatch batch, Report report)
    {
        var units = ImmutableArray.CreateBuilder<ControlUnit>();
        var owners = new Dictionary<long, string>();
        foreach (var (key, value) in map?.Entries ?? [])
        {
            var name = Ids.Name(key, "a control unit", report);
            if (name == VehicleParts.AllUnits) report.Add(NameCodes.Reserved, key.Place, "no control unit can be called 'ecus', which means all of them");
            if (MapReader.Open(value, UnitShape, report) is not { } keys) continue;

            var when = Conditions.Add(keys, "when", names, batch);
            var doip = (int?)keys.Whole("doip");
            var can = keys.Open("can", CanShape);
            if (can?.Whole("request") is not { } request || can.Whole("response") is not { } response || name is null) continue;

            Own(request, name, can, "request", owners);
            Own(response, name, can, "response", owners);
            units.Add(new ControlUnit(name, (uint)request, (uint)response, doip, when));
        }

        return units.ToImmutable();
    }

    // Two owners of one address pair would answer each other's flow control.
    private static void Own(long id, string name, MapReader can, string key, Dictionary<long, string> owners)
    {
        if (owners.TryAdd(id, name)) return;
        can.Report.Add(VehicleCodes.AddressShared, can.PlaceOf(key), $"0x{id:X} already belongs to '{owners[id]}'");
    }
}
