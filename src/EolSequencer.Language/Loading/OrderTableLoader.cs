using EolSequencer.Language.Binding.Orders;
using EolSequencer.Language.Binding.Vehicles;
using EolSequencer.Language.Csv;
using EolSequencer.Language.Diagnostics;
using EolSequencer.Language.Expressions;
using EolSequencer.Language.Plants;
using EolSequencer.Language.Source;
using EolSequencer.Language.Yaml;
using EolSequencer.Model.Vehicles;

namespace EolSequencer.Language.Loading;

/// <summary>
/// Loads orders from a table, one line a vehicle. Columns are <c>order</c>, <c>vin</c>, <c>vehicle-type</c>, the options by
/// their names, and facts as <c>order.FACT</c> or <c>order.FACT[INDEX]</c>; nothing in a cell means: not said.
/// </summary>
public sealed class OrderTableLoader
{
    private const string FactPrefix = "order.";
    private static readonly string[] Own = ["order", "vin", "vehicle-type"];

    private readonly PlantFolder _folder;
    private readonly ExpressionCache _cache;
    private readonly Dictionary<string, VehicleType?> _types = new(StringComparer.Ordinal);
    private readonly HashSet<string> _taken = new(StringComparer.Ordinal);

    private OrderTableLoader(PlantFolder folder, ExpressionCache cache) => (_folder, _cache) = (folder, cache);

    /// <summary>Loads a table. Trouble is a diagnostic at its cell, never an exception; a line with an error gives no order, the others do.</summary>
    /// <param name="path">The table, as the user typed it.</param>
    /// <param name="plant">A file or folder of the plant.</param>
    public static OrderTable Load(string path, string plant, ExpressionCache cache)
    {
        var report = new Report();
        if (SourceFiles.TryRead(path, report) is not { } text || PlantFolder.Find(plant, report) is not { } folder || CsvReader.Read(text, report) is not { } table)
        {
            return new OrderTable([], report.InOrder);
        }

        var loader = new OrderTableLoader(folder, cache);
        var (orders, diagnostics) = (new List<Order>(), new List<Diagnostic>());
        foreach (var row in table.Rows)
        {
            var own = new Report();
            if (loader.Bind(table.Columns, row, own) is { } order && !own.HasErrors) orders.Add(order);
            diagnostics.AddRange(own.InOrder);
        }

        return new OrderTable(orders, [.. folder.Report.InOrder, .. diagnostics]);
    }

    private Order? Bind(IReadOnlyList<YamlScalar> columns, IReadOnlyList<YamlScalar> row, Report report)
    {
        var root = AsMap(columns, row);
        if (OrderBinder.TypeOf(root, report) is not { } id) return null;
        if (_folder.Reporting(report).Find(FileKind.VehicleType, id.Text, id.Place) is not { } file || TypeOf(file) is not { } type) return null;
        if (new OrderBinder(type, report).Bind(root) is not { } order) return null;
        if (_taken.Add("order " + order.Id) & _taken.Add("vin " + order.Vin.Text)) return order;
        report.Add(OrderCodes.SeveralOrders, row[0].Place, $"order '{order.Id}' or vehicle {order.Vin.Text} stands in an earlier line");
        return null;
    }

    private VehicleType? TypeOf(PlantFile file)
    {
        if (_types.TryGetValue(file.Id, out var known)) return known;
        var batch = new ExpressionBatch(_folder.Report, _cache);
        var bound = file.Root is { } root ? VehicleTypeBinder.Bind(root, batch, _folder.Report) : null;
        return _types[file.Id] = bound is not null && batch.Compile() ? bound.Type : null;
    }

    /// <summary>A line as the order file it stands for; each key and value keeps its place in the table.</summary>
    private static YamlMap AsMap(IReadOnlyList<YamlScalar> columns, IReadOnlyList<YamlScalar> row)
    {
        var said = columns.Zip(row).Where(cell => cell.Second.Text.Length > 0).ToList();
        var entries = said.Where(cell => Own.Contains(cell.First.Text)).Select(cell => new YamlEntry(cell.First, cell.Second)).ToList();
        var options = said.Where(cell => !Own.Contains(cell.First.Text) && !IsFact(cell.First)).Select(cell => new YamlEntry(cell.First, cell.Second));
        entries.Add(new YamlEntry(Named(row[0], "options"), Map(row, options)));
        entries.Add(new YamlEntry(Named(row[0], "facts"), Map(row, Facts(row, said.Where(cell => IsFact(cell.First))))));
        return Map(row, entries);
    }

    private static IEnumerable<YamlEntry> Facts(IReadOnlyList<YamlScalar> row, IEnumerable<(YamlScalar Column, YamlScalar Cell)> said)
    {
        foreach (var fact in said.GroupBy(cell => cell.Column.Text[FactPrefix.Length..].Split('[')[0]))
        {
            var first = fact.First();
            if (!first.Column.Text.Contains('[')) yield return new YamlEntry(Named(first.Column, fact.Key), first.Cell);
            else yield return new YamlEntry(Named(first.Column, fact.Key), Map(row, fact.Select(cell => new YamlEntry(Named(cell.Column, IndexOf(cell.Column.Text)), cell.Cell))));
        }
    }

    private static bool IsFact(YamlScalar column) => column.Text.StartsWith(FactPrefix, StringComparison.Ordinal);

    private static string IndexOf(string column) => column.Split('[', 2) is [_, var index] ? index.TrimEnd(']') : "";

    private static YamlScalar Named(YamlScalar at, string text) => new(at.Source, at.Start, at.End, text, ScalarStyle.Plain);

    private static YamlMap Map(IReadOnlyList<YamlScalar> row, IEnumerable<YamlEntry> entries) => new(row[0].Source, row[0].Start, row[^1].End, [.. entries]);
}

/// <summary>What loading a table of orders came to.</summary>
/// <param name="Orders">Those of the lines without an error.</param>
/// <param name="Diagnostics">Everything found, by file, line and column.</param>
public sealed record OrderTable(IReadOnlyList<Order> Orders, IReadOnlyList<Diagnostic> Diagnostics);
