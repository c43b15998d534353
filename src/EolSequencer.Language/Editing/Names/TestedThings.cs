using EolSequencer.Language.Plants;
using EolSequencer.Language.Yaml;

namespace EolSequencer.Language.Editing.Names;

/// <summary>The steps that a test of expected results can name: those of its sequence, without loop values.</summary>
internal static class TestedThings
{
    private static readonly string[] Lists = ["prepare", "steps", "always", "after-verdict"];

    /// <summary>The steps of the sequence under test.</summary>
    public static IEnumerable<Thing> Steps(Spot spot) => All(spot).Where(one => one.IsStep).Select(one => one.Thing);

    /// <summary>The same with the groups, of which a run may do some only.</summary>
    public static IEnumerable<Thing> StepsAndGroups(Spot spot) => All(spot).Select(one => one.Thing);

    private static IEnumerable<(Thing Thing, bool IsStep)> All(Spot spot) =>
        Sequences(spot).SelectMany(file => Lists.SelectMany(list => In(Value(file.Root, list), "", spot, 0))).DistinctBy(one => one.Thing.Name);

    /// <summary>The sequence that the test or the top of its file names; else those for the kind of its station.</summary>
    private static IEnumerable<PlantFile> Sequences(Spot spot)
    {
        if (Said("sequence", spot) is { } id) return spot.Folder.Find(FileKind.Sequence, id) is { } named ? [named] : [];
        var kind = Said("station", spot) is { } station ? Text(spot.Folder.Find(FileKind.Station, station)?.Root, "station-kind") : null;
        return spot.Folder.Of(FileKind.Sequence).Where(file => kind is null || Text(file.Root, "station-kind") == kind);
    }

    private static string? Said(string key, Spot spot) =>
        spot.Caret.Around.Reverse().Select(around => around.Map.TextOf(key)).FirstOrDefault(text => text is not null);

    private static IEnumerable<(Thing Thing, bool IsStep)> In(YamlNode? list, string around, Spot spot, int depth) =>
        ((list as YamlList)?.Items ?? []).OfType<YamlMap>().SelectMany(map => Of(map, around, spot, depth));

    private static IEnumerable<(Thing Thing, bool IsStep)> Of(YamlMap map, string around, Spot spot, int depth)
    {
        if (Value(map, "together") is YamlMap branches) return branches.Entries.SelectMany(branch => In(branch.Value, around, spot, depth));
        if (Value(map, "step") is YamlScalar step) return [(Thing(map, step, around, map.Entries.Count > 1 ? Shown(map.Entries[1]) : "step"), true)];
        if (Value(map, "group") is not YamlScalar group) return [];
        var inside = Inner(around, group.Text);
        return
        [
            (Thing(map, group, around, "group"), false),
            .. In(Value(map, "steps"), inside, spot, depth),
            .. In(Value(map, "always"), inside, spot, depth),
            .. Fragment(map, spot, depth) is { } fragment ? In(Value(fragment.Root, "steps"), inside, spot, depth + 1) : [],
        ];
    }

    private static PlantFile? Fragment(YamlMap group, Spot spot, int depth) =>
        depth < MostInEachOther && Text(group, "use") is { } id ? spot.Folder.Find(FileKind.Fragment, id) : null;

    /// <summary>Groups nest no deeper in a sequence that loads.</summary>
    private const int MostInEachOther = 8;

    private static Thing Thing(YamlMap map, YamlScalar id, string around, string detail) => new(Inner(around, id.Text), ProposalKind.Name, detail)
    {
        Text = Value(map, "title") is { } title ? title.Source.Text[title.Start..title.End] : "",
        Place = id.ContentPlace,
    };

    private static string Shown(YamlEntry entry) => entry.Value is YamlScalar value ? $"{entry.Key.Text}: {value.Text}" : entry.Key.Text;

    private static string Inner(string around, string own) => around.Length == 0 ? own : $"{around}.{own}";

    private static string? Text(YamlNode? map, string key) => (Value(map, key) as YamlScalar)?.Text;

    private static YamlNode? Value(YamlNode? map, string key) => (map as YamlMap)?.Find(key)?.Value;
}
