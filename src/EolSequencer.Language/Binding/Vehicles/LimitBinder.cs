using System.Collections.Immutable;
using EolSequencer.Language.Binding.Values;
using EolSequencer.Language.Diagnostics;
using EolSequencer.Language.Expectations;
using EolSequencer.Language.Syntax;
using EolSequencer.Language.Yaml;

namespace EolSequencer.Language.Binding.Vehicles;

/// <summary>Reads the table of limits. What each judges, and so its unit, is known where a step names it.</summary>
internal static class LimitBinder
{
    private static readonly MapShape Row = new(
        "a row of a limit",
        [new("is", Forms.Expectation, "what the value must be")],
        [new("when", Forms.Expression, "vehicles the row is for; exactly one row applies to each")]);

    private static readonly MapShape Table = new(
        "a limit in a table", [new("rows-from", new ValueForm.Text(@"\.[cC][sS][vV]$", Subject.None), "path of a CSV file with the rows, from the plant's folder")], []);

    /// <summary>What a limit looks like: one window, a row for each kind of vehicle, a window by index, or a table with one of the two.</summary>
    public static ValueForm Form { get; } = Forms.Either(
        Forms.Expectation, Forms.List(Forms.Map(Row), 1), Forms.Map(Table), Forms.Names(Ids.IndexForm, Forms.Expectation));

    public static ImmutableDictionary<string, LimitDefinition> Bind(YamlMap? map, VehicleParts parts)
    {
        var limits = ImmutableDictionary.CreateBuilder<string, LimitDefinition>(StringComparer.Ordinal);
        foreach (var (key, value) in map?.Entries ?? [])
        {
            if (Ids.Name(key, "a limit", parts.Report) is { } name && Limit(name, value, parts) is { } limit) limits[name] = limit;
        }

        return limits.ToImmutable();
    }

    private static LimitDefinition? Limit(string name, YamlNode node, VehicleParts parts) => node switch
    {
        YamlList list => Rows(name, list, parts),
        YamlMap map when map.Find("rows-from") is not null => MapReader.Open(map, Table, parts.Report)?.Text("rows-from") is { } path ? LimitTable.Read(name, path, parts) : null,
        YamlMap map => ByIndex(name, map, parts.Report),
        _ => IsWindow(node, parts.Report) ? new LimitDefinition.Single(name, node) : null,
    };

    private static LimitDefinition.Rows? Rows(string name, YamlList list, VehicleParts parts)
    {
        var rows = ImmutableArray.CreateBuilder<LimitDefinition.Row>(list.Items.Count);
        foreach (var item in list.Items)
        {
            if (MapReader.Open(item, Row, parts.Report) is not { } keys) continue;
            var when = Conditions.Add(keys, "when", parts.Names, parts.Batch);
            if (keys.Find("is") is { } node && IsWindow(node, parts.Report)) rows.Add(new LimitDefinition.Row(when, node));
        }

        if (list.Items.Count == 0) parts.Report.Add(LimitCodes.NoRows, list.Place, $"the limit '{name}' has no rows");
        return rows.Count == 0 ? null : new LimitDefinition.Rows(name, rows.ToImmutable());
    }

    private static LimitDefinition.ByIndex? ByIndex(string name, YamlMap map, Report report)
    {
        var windows = ImmutableArray.CreateBuilder<(string, YamlNode)>(map.Entries.Count);
        foreach (var (key, value) in map.Entries)
        {
            if (Ids.IndexValue(key, "an index", report) is { } index && IsWindow(value, report)) windows.Add((index, value));
        }

        return windows.Count == 0 ? null : new LimitDefinition.ByIndex(name, windows.ToImmutable());
    }

    /// <summary>Whether a text reads as an expectation of its own; reported when not. What it judges is checked at each use.</summary>
    public static bool IsWindow(YamlNode node, Report report)
    {
        if (ExpectationParser.Parse(node, report) is not { } syntax) return false;
        if (syntax is not ExpectationSyntax.Limit) return true;
        report.Add(LimitCodes.LimitInLimit, node.Place, $"{Shown.Quoted(syntax.Part.Text)} is a limit itself");
        return false;
    }
}
