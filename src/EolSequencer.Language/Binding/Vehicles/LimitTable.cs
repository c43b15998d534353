using System.Collections.Immutable;
using EolSequencer.Language.Binding.Values;
using EolSequencer.Language.Csv;
using EolSequencer.Language.Diagnostics;
using EolSequencer.Language.Expressions;
using EolSequencer.Language.Plants;
using EolSequencer.Language.Source;
using EolSequencer.Language.Yaml;
using EolSequencer.Model.Expressions;
using EolSequencer.Model.Sequences;
using EolSequencer.Model.Source;
using EolSequencer.Model.Values;

namespace EolSequencer.Language.Binding.Vehicles;

/// <summary>
/// A limit whose rows stand in a CSV file. A column named by an option, or by <c>order.FACT</c>, holds the value that a vehicle
/// must have, and nothing where all do; <c>when</c> holds a condition beside them; <c>index</c> makes a window by index; <c>is</c>
/// is the window.
/// </summary>
internal sealed class LimitTable
{
    private const string Index = "index";
    private const string When = "when";
    private const string Is = "is";
    private const string FactPrefix = "order.";

    private readonly VehicleParts _parts;
    private readonly string _name;
    private readonly CsvTable _table;

    private readonly Dictionary<string, ValueShape> _shapes;

    private LimitTable(VehicleParts parts, string name, CsvTable table)
    {
        (_parts, _name, _table) = (parts, name, table);
        _shapes = parts.Names.Vehicle!.Options.ToDictionary(option => option.Name, option => option.Shape, StringComparer.Ordinal);
        foreach (var fact in parts.Names.Vehicle.OrderFacts)
        {
            if (fact.Indexes.IsEmpty && (fact.Shape.Kind == ValueKind.Truth || !fact.Shape.Choices.IsEmpty)) _shapes[FactPrefix + fact.Name] = fact.Shape;
        }
    }

    /// <summary>The limit; null: already reported.</summary>
    /// <param name="path">Where the vehicle type names the file.</param>
    public static LimitDefinition? Read(string name, YamlScalar path, VehicleParts parts)
    {
        if (Open(path, parts.Texts, parts.Report) is not { } found) return null;
        parts.Tables.Add(new SourceCopy(found.Path, found.Text.Sha256, found.Text.Text));
        return CsvReader.Read(found.Text, parts.Report) is { } table ? new LimitTable(parts, name, table).Bind() : null;
    }

    private static (string Path, SourceText Text)? Open(YamlScalar path, PlantTexts texts, Report report)
    {
        var root = texts.RootOf(path.Source);
        var full = root is null ? null : Path.GetFullPath(path.Text, root);
        if (full is null || !full.StartsWith(root + Path.DirectorySeparatorChar, StringComparison.Ordinal) || !full.EndsWith(".csv", StringComparison.OrdinalIgnoreCase))
        {
            report.Add(LimitCodes.BadTable, path.Place, $"{Shown.Quoted(path.Text)} is no table in the plant's folder");
            return null;
        }

        if (!texts.IsThere(full))
        {
            report.Add(FileCodes.Missing, path.Place, $"there is no file {Shown.Quoted(path.Text)} in the plant's folder", "add the file, or correct the path");
            return null;
        }

        return texts.ReadPlain(full, report) is { } text ? (Path.GetRelativePath(root!, full).Replace(Path.DirectorySeparatorChar, '/'), text) : null;
    }

    private LimitDefinition? Bind()
    {
        if (!KnowsColumns()) return null;
        var isColumn = ColumnOf(Is);
        if (isColumn < 0)
        {
            _parts.Report.Add(LimitCodes.NoWindows, _table.Columns[0].Place, $"the table of limits.{_name} has no column 'is'");
            return null;
        }

        if (_table.Rows.Count == 0)
        {
            _parts.Report.Add(LimitCodes.NoRows, _table.Columns[0].Place, $"the table of limits.{_name} has no lines");
            return null;
        }

        return ColumnOf(Index) < 0 ? Rows(isColumn) : Windows(isColumn);
    }

    private bool KnowsColumns()
    {
        var isGood = true;
        foreach (var column in _table.Columns)
        {
            if (column.Text is Index or When or Is || _shapes.ContainsKey(column.Text)) continue;
            isGood = false;
            var near = Nearest.Of(column.Text, _shapes.Keys.Concat([Index, When, Is]));
            _parts.Report.Add(LimitCodes.UnknownColumn, column.Place, $"{Shown.Quoted(column.Text)} is no option and no fact of an order with a closed list of values", near is null ? null : $"did you mean '{near}'?");
        }

        if (isGood && ColumnOf(Index) >= 0 && _table.Columns.FirstOrDefault(column => column.Text is not (Index or Is)) is { } other)
        {
            _parts.Report.Add(LimitCodes.IndexAndVehicle, other.Place, $"'{other.Text}' goes by vehicle, and the table has windows by index");
            return false;
        }

        return isGood;
    }

    private LimitDefinition.ByIndex? Windows(int isColumn)
    {
        var windows = ImmutableArray.CreateBuilder<(string, YamlNode)>(_table.Rows.Count);
        var seen = new Dictionary<string, SourcePlace>(StringComparer.Ordinal);
        foreach (var row in _table.Rows)
        {
            var cell = row[ColumnOf(Index)];
            if (Ids.IndexValue(cell, "an index", _parts.Report) is not { } index || !LimitBinder.IsWindow(row[isColumn], _parts.Report)) continue;
            if (seen.TryAdd(index, cell.Place)) windows.Add((index, row[isColumn]));
            else _parts.Report.Add(NameCodes.Twice, cell.Place, $"'{index}' already stands at {seen[index]}");
        }

        return windows.Count == 0 ? null : new LimitDefinition.ByIndex(_name, windows.ToImmutable());
    }

    private LimitDefinition.Rows? Rows(int isColumn)
    {
        var rows = ImmutableArray.CreateBuilder<LimitDefinition.Row>(_table.Rows.Count);
        foreach (var row in _table.Rows)
        {
            if (!TryCondition(row, out var when) || !LimitBinder.IsWindow(row[isColumn], _parts.Report)) continue;
            rows.Add(new LimitDefinition.Row(when, row[isColumn]));
        }

        return rows.Count == 0 ? null : new LimitDefinition.Rows(_name, rows.ToImmutable());
    }

    /// <summary>What a line says of the vehicle, as C#: it is then proven like any other condition.</summary>
    private bool TryCondition(IReadOnlyList<YamlScalar> row, out Expression? when)
    {
        when = null;
        var parts = new List<(string Text, YamlScalar Cell)>();
        var isGood = true;
        for (var at = 0; at < row.Count; at++)
        {
            if (_table.Columns[at].Text == Is || row[at].Text.Length == 0) continue;
            if (_table.Columns[at].Text == When) parts.Add((row[at].Text, row[at]));
            else if (Comparison(_table.Columns[at].Text, row[at]) is { } comparison) parts.Add((comparison, row[at]));
            else isGood = false;
        }

        if (!isGood || parts.Count == 0) return isGood;
        var text = parts.Count == 1 ? parts[0].Text : string.Join(" && ", parts.Select(part => $"({part.Text})"));
        var node = new YamlScalar(row[0].Source, parts[0].Cell.Start, parts[^1].Cell.End, text, ScalarStyle.Plain);
        when = _parts.Batch.Add(node, 0, text.Length, _parts.Names, Wanted.Truth);
        return true;
    }

    private string? Comparison(string column, YamlScalar cell)
    {
        var shape = _shapes[column];
        var name = column.StartsWith(FactPrefix, StringComparison.Ordinal) ? column : "vehicle." + column;
        IReadOnlyList<string> values = shape.Kind == ValueKind.Truth ? ["yes", "no"] : shape.Choices;
        if (values.Contains(cell.Text)) return shape.Kind != ValueKind.Truth ? $"{name} == \"{cell.Text}\"" : cell.Text == "yes" ? name : "!" + name;

        var near = Nearest.Of(cell.Text, values);
        _parts.Report.Add(LimitCodes.UnknownValue, cell.Place, $"'{column}' is never {Shown.Quoted(cell.Text)}", near is null ? $"write {Shown.OneOf(values)}, or nothing for all of them" : $"did you mean '{near}'?");
        return null;
    }

    private int ColumnOf(string name)
    {
        for (var at = 0; at < _table.Columns.Count; at++)
        {
            if (_table.Columns[at].Text == name) return at;
        }

        return -1;
    }
}
