using System.Collections.Immutable;
using EolSequencer.Language.Yaml;
using EolSequencer.Model.Plants;

namespace EolSequencer.Language.Binding.Stations;

/// <summary>Copies what an author wrote for an adapter, with its places.</summary>
internal static class SettingReading
{
    /// <summary>The settings of a map but those keys that are nobody's setting.</summary>
    public static Setting.Map Read(YamlMap map, params ReadOnlySpan<string> without)
    {
        var entries = ImmutableArray.CreateBuilder<Setting.Entry>(map.Entries.Count);
        foreach (var (key, value) in map.Entries)
        {
            if (!without.Contains(key.Text) && Read(value) is { } setting) entries.Add(new Setting.Entry(key.Text, key.Place, setting));
        }

        return new Setting.Map(entries.ToImmutable(), map.Place);
    }

    private static Setting? Read(YamlNode node) => node switch
    {
        YamlScalar scalar => new Setting.Scalar(scalar.Text, scalar.Place),
        YamlList list => new Setting.List([.. list.Items.Select(Read).OfType<Setting>()], list.Place),
        YamlMap map => Read(map),
        _ => null,
    };
}
