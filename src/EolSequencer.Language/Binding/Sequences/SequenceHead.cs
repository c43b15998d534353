using System.Collections.Immutable;
using EolSequencer.Language.Binding.Values;
using EolSequencer.Language.Diagnostics;
using EolSequencer.Language.Syntax;
using EolSequencer.Language.Yaml;
using EolSequencer.Model.Sequences;

namespace EolSequencer.Language.Binding.Sequences;

/// <summary>What a sequence refers to, read before anything else of it.</summary>
/// <param name="Id">Empty when it cannot be one, which has then been reported.</param>
/// <param name="VehicleType">Where the id of the vehicle type stands.</param>
/// <param name="Devices">The roles in written order, each with the id of its kind.</param>
internal sealed record SequenceHead(MapReader Keys, string Id, YamlScalar VehicleType, ImmutableArray<(string Role, YamlScalar Kind)> Devices)
{
    private static readonly MapShape Shape = new(
        "a sequence",
        ["sequence", "revision", "vehicle-type", "station-kind", "devices", "steps"],
        ["title", "cycle-time", "needs", "parameters", "words", "defaults", "prepare", "always", "after-verdict"]);

    /// <summary>The head; null: already reported.</summary>
    public static SequenceHead? Read(YamlNode root, Report report)
    {
        if (MapReader.Open(root, Shape, report) is not { } keys) return null;
        var id = keys.Find("sequence") is { } node ? Ids.OfFile(node, "a sequence", report) : null;
        var devices = Roles(keys.FreeMap("devices"), report);
        return keys.Text("vehicle-type") is { } type ? new SequenceHead(keys, id ?? "", type, devices) : null;
    }

    /// <summary>The roles whose kind was found.</summary>
    public IEnumerable<DeviceRole> Roles(BindingContext context) => Devices
        .Where(device => context.Roles.ContainsKey(device.Role))
        .Select(device => new DeviceRole(device.Role, context.Roles[device.Role]));

    private static ImmutableArray<(string, YamlScalar)> Roles(YamlMap? map, Report report)
    {
        var roles = ImmutableArray.CreateBuilder<(string, YamlScalar)>();
        foreach (var (key, value) in map?.Entries ?? [])
        {
            if (Ids.FirstName(key, "a device", report) is { } role && value.AsText($"the kind of '{key.Text}'", report) is { } kind) roles.Add((role, kind));
        }

        return roles.ToImmutable();
    }
}
