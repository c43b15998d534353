using EolSequencer.Language.Binding.Vehicles;
using EolSequencer.Language.Editing.Outline;
using EolSequencer.Language.Plants;
using EolSequencer.Language.Yaml;
using EolSequencer.Model.Devices;
using EolSequencer.Model.Plants;
using EolSequencer.Model.Source;

namespace EolSequencer.Language.Editing.Names;

/// <summary>A caret in a file of a plant, with what the plant knows there.</summary>
internal sealed class Spot(Caret caret, PlantFile file, PlantFolder folder, PlantBindings bindings)
{
    public Caret Caret => caret;

    public PlantFile File => file;

    public PlantFolder Folder => folder;

    public PlantBindings Bindings => bindings;

    public Plant? Plant => bindings.Plant(folder.PlantFile);

    /// <summary>The file of the vehicle type that is spoken of; in a file that names none, the first of the plant.</summary>
    public PlantFile? TypeFile => file.Kind == FileKind.VehicleType ? file
        : caret.Root.TextOf("vehicle-type") is { } id && folder.Find(FileKind.VehicleType, id) is { } named ? named
        : folder.Of(FileKind.VehicleType).FirstOrDefault();

    public BoundVehicleType? Vehicle => bindings.VehicleType(TypeFile);

    /// <summary>The devices of the file, each with its kind and the file that describes it.</summary>
    public IEnumerable<(string Role, DeviceKind Kind, PlantFile? File)> Roles()
    {
        foreach (var entry in (caret.Root.Find("devices") as OutlineMap)?.Entries ?? [])
        {
            if (entry.Value is not OutlineText kind) continue;
            var isBus = kind.Text == DeviceKind.VehicleBus;
            var described = isBus ? TypeFile : folder.Find(FileKind.DeviceKind, kind.Text);
            if ((isBus ? Vehicle?.Type.Bus : bindings.DeviceKind(described)) is { } found) yield return (entry.Key.Text, found, described);
        }
    }

    /// <summary>Where a name stands in a map of a file, such as a channel in <c>channels</c>.</summary>
    public static SourcePlace? PlaceIn(PlantFile? file, string key, string name) =>
        ((file?.Root as YamlMap)?.Find(key)?.Value as YamlMap)?.Find(name)?.Key.Place;

    /// <summary>Where something of this file's structure stands.</summary>
    public SourcePlace? PlaceOf(OutlineText text) =>
        file.Text is { } source && caret.ToText(text.End) <= source.Text.Length ? source.PlaceOf(caret.ToText(text.Start), caret.ToText(text.End)) : null;
}
