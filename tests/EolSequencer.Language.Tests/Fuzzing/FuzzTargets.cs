using CsCheck;
using EolSequencer.Language.Binding.Orders;
using EolSequencer.Language.Binding.Vehicles;
using EolSequencer.Language.Csv;
using EolSequencer.Language.Diagnostics;
using EolSequencer.Language.Expectations;
using EolSequencer.Language.Expressions;
using EolSequencer.Language.Scripts;
using EolSequencer.Language.Source;
using EolSequencer.Language.Tests.Expectations;
using EolSequencer.Language.Tests.Loading;
using EolSequencer.Language.Yaml;
using EolSequencer.Model.Units;
using EolSequencer.Model.Vehicles;

namespace EolSequencer.Language.Tests.Fuzzing;

/// <summary>Every reader of the language, from the outermost bytes to the C# inside.</summary>
internal static class FuzzTargets
{
    private static readonly string[] Files = [.. RepositoryFiles.Named("*.yaml").Select(File.ReadAllText)];

    private static readonly JudgedValue[] Judged =
        [Judging.Number("V"), Judging.Number("km/h"), Judging.Count, Judging.Text, Judging.Choice, Judging.Truth, Judging.List, Judging.Time];

    private static readonly VehicleType Orrin = ReadType();

    public static IReadOnlyList<FuzzTarget> All { get; } =
    [
        new("yaml", 33, Mutations.OfPieces(Files, 30), Yaml),
        new("units", 15, Grammar.Units, Units),
        new("windows", 20, Gen.OneOf(Grammar.Expectations, Mutations.Of("1.70 .. 2.25 A", "140 ± 10 N·m", "one of [a, b]", "matches /[0-9A-Z]{10}/", "limits.usual[wheel]")).Select(InYaml), Windows),
        new("tables", 12, Mutations.Of([.. RepositoryFiles.Named("*.csv").Select(File.ReadAllText), "a,b\r\n\"1\",\"x\"\"y\"\r\n", "a\n\"b\nc\"\n"]), Tables),
        new("orders", 4, Mutations.Of([.. RepositoryFiles.Named("*.yaml").Where(path => path.Contains("orders", StringComparison.Ordinal)).Select(File.ReadAllText)]), Orders),
        new("scripts", 6, Mutations.Of([.. RepositoryFiles.Named("*.yaml").Where(path => path.Contains("scripts", StringComparison.Ordinal)).Select(File.ReadAllText)]), Scripts),
        new("expressions", 10, Grammar.Expressions.Select(InYaml), FuzzedCode.Accepts),
    ];

    /// <summary>A text as the value of the first key.</summary>
    private static string InYaml(string text) => $"expect: '{text.Replace("'", "''", StringComparison.Ordinal)}'\n";

    private static bool Yaml(SourceText source, Report report) => YamlReader.Read(source, report) is not null;

    private static bool Units(SourceText source, Report report)
    {
        if (UnitTable.Find(source.Text) is not UnitLookup.Unknown unknown) return true;
        report.Add(UnitCodes.Unknown, source.PlaceOf(0, source.Text.Length), unknown.Text, unknown.Hint);
        return false;
    }

    private static bool Windows(SourceText source, Report report)
    {
        if (YamlReader.Read(source, report) is not YamlMap { Entries: [{ Value: var node }, ..] }) return false;
        if (ExpectationParser.Parse(node, report) is not { } syntax) return false;
        var judged = Judged[source.Text.Length % Judged.Length];
        return new ExpectationBinder(judged, Judging.AnyNames, report).Bind(syntax) is not null;
    }

    private static bool Tables(SourceText source, Report report) => CsvReader.Read(source, report) is not null;

    private static bool Orders(SourceText source, Report report) =>
        YamlReader.Read(source, report) is { } root && new OrderBinder(Orrin, report).Bind(root) is not null;

    private static bool Scripts(SourceText source, Report report) =>
        YamlReader.Read(source, report) is { } root && ScriptBinder.Bind(root, report) is not null;

    private static VehicleType ReadType()
    {
        var report = new Report();
        var batch = new ExpressionBatch(report, ExpressionCache.None);
        var text = SourceFiles.TryRead(Path.Combine(DemoPlant.Folder, "vehicle-types", "orrin.yaml"), report)!;
        var type = VehicleTypeBinder.Bind(YamlReader.Read(text, report)!, batch, report)!.Type;
        Assert.True(batch.Compile());
        return type;
    }
}
