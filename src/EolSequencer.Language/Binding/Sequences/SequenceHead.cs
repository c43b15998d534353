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
    /// <summary>The key that names the devices.</summary>
    public static MapKey DevicesKey { get; } = new("devices", Forms.Names(Ids.FirstNameForm, Forms.Named(Subject.DeviceKind)), "the roles it uses, each with its device kind");

    /// <summary>The keys of the file.</summary>
    public static MapShape File { get; } = new(
        "a sequence",
        [
            new("sequence", Ids.FileForm, "id of the sequence"),
            new("revision", Forms.Whole(1, int.MaxValue), "counts approved changes"),
            new("vehicle-type", Forms.Named(Subject.VehicleType), "vehicle type it tests"),
            new("station-kind", Ids.FileNamed(Subject.StationKind), "where it runs"),
            DevicesKey,
            new("steps", NodeListBinder.Filled, "steps, groups and branches"),
        ],
        [
            NodeRules.TitleKey,
            new("cycle-time", Forms.Duration(TimeSpan.FromSeconds(1), TimeSpan.FromHours(24)), "what the station may take for one vehicle"),
            new("needs", Forms.List(Forms.Named(Subject.StationKind)), "station kinds that must be passed before this run may begin"),
            ConditionsBinder.Key,
            ParameterBinder.Key,
            WordsBinder.Key,
            DefaultsBinder.Key,
            new("prepare", NodeListBinder.Form, "before the first step, and again after every interruption"),
            new("always", NodeListBinder.Form, "whatever happened, also after a crash; 5 s a step, 30 s in all"),
            new("after-verdict", NodeListBinder.Form, "sees run.verdict and cannot change it"),
        ]);

    /// <summary>The head; null: already reported.</summary>
    public static SequenceHead? Read(YamlNode root, Report report)
    {
        if (MapReader.Open(root, File, report) is not { } keys) return null;
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
