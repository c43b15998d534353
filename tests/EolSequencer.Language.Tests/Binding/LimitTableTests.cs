using EolSequencer.Language.Expressions;
using EolSequencer.Language.Loading;
using EolSequencer.Model.Sequences;

namespace EolSequencer.Language.Tests.Binding;

/// <summary>A limit in a table is the same limit: proven for every vehicle, and a fault stands where its author finds it.</summary>
public sealed class LimitTableTests : IDisposable
{
    private const string Sequence = """
        sequence: odd
        revision: 1
        vehicle-type: teal
        station-kind: startup
        devices: { bus: vehicle-bus, meter: supply-meter, rollers: brake-rollers }
        defaults: { within: 5 s }
        steps:
          - { step: a, read: meter.voltage, expect: limits.table }

        """;

    private readonly TestPlant _plant = new();

    public void Dispose() => _plant.Dispose();

    [Fact]
    public void Lines_of_a_table_are_rows_by_vehicle()
    {
        var rows = Assert.IsType<Expectation.ByVehicle>(Loaded("rims,tow,when,is\nsteel,,,11 .. 12 V\nalloy,yes,,11 .. 13 V\nalloy,no,\"vehicle.drive == \"\"all\"\"\",11 .. 14 V\nalloy,no,\"vehicle.drive == \"\"front\"\"\",11 .. 15 V\n")).Rows;

        Assert.Equal(
            ["vehicle.rims == \"steel\"", "(vehicle.rims == \"alloy\") && (vehicle.tow)", "(vehicle.rims == \"alloy\") && (!vehicle.tow) && (vehicle.drive == \"all\")", "(vehicle.rims == \"alloy\") && (!vehicle.tow) && (vehicle.drive == \"front\")"],
            rows.Select(row => row.When!.Text));
        Assert.Equal("15", Assert.IsType<Operand.Constant>(Assert.IsType<Expectation.Within>(rows[^1].Is).High).Value.ToString()!.Split(' ')[0]);
    }

    [Fact]
    public void Lines_of_a_table_are_windows_by_index()
    {
        var windows = Assert.IsType<Expectation.ByIndex>(Loaded("index,is\nfl,1 .. 2 N\nfr,1 .. 3 N\nrl,1 .. 4 N\nrr,1 .. 5 N\n", Sequence.Replace("meter.voltage", "rollers.force", StringComparison.Ordinal)));

        Assert.Equal(["fl", "fr", "rl", "rr"], windows.Windows.Keys.Order(StringComparer.Ordinal));
    }

    [Fact]
    public void The_table_is_one_of_the_files_that_a_sequence_is_made_from()
    {
        const string Table = "rims,is\nsteel,11 .. 12 V\nalloy,11 .. 13 V\n";
        var sequence = Load(Table, Sequence).Sequence!;

        var copy = Assert.Single(sequence.Sources, source => source.Path == "limits/table.csv");
        Assert.Equal(Table, copy.Text);
        Assert.Equal(Convert.ToHexStringLower(System.Security.Cryptography.SHA256.HashData(System.Text.Encoding.UTF8.GetBytes(Table))), copy.Hash);
        Assert.NotEqual(copy.Hash, Load(Table.Replace("12", "12.5", StringComparison.Ordinal), Sequence).Sequence!.Sources.Single(source => source.Path == copy.Path).Hash);
    }

    [Theory]
    [InlineData("rim,is\nsteel,1 .. 2 V\n", "1:1 LIM021")]
    [InlineData("paint,is\nred,1 .. 2 V\n", "1:1 LIM021")]
    [InlineData("rims\nsteel\n", "1:1 LIM022")]
    [InlineData("rims,is\n", "1:1 LIM003")]
    [InlineData("rims,is\nsteal,1 .. 2 V\nalloy,1 .. 2 V\n", "2:1 LIM023")]
    [InlineData("tow,is\ntrue,1 .. 2 V\n", "2:1 LIM023")]
    [InlineData("rims,is\nsteel,2 .. 1 V\nalloy,1 .. 2 V\n", "2:7 WIN003")]
    [InlineData("rims,is\nsteel,limits.rest\nalloy,1 .. 2 V\n", "2:7 LIM002")]
    [InlineData("rims,is\nsteel,1 .. 2 A\nalloy,1 .. 2 V\n", "2:7 UNT004")]
    [InlineData("when,is\nvehicle.tov,1 .. 2 V\n", "2:9 EXP006")]
    [InlineData("order.market,is\nnorth,1 .. 2 V\neast,1 .. 2 V\n", "3:1 LIM023")]
    [InlineData("index,rims,is\nfl,steel,1 .. 2 N\n", "1:7 LIM024")]
    [InlineData("index,is\nfl,1 .. 2 N\nfl,1 .. 2 N\n", "3:1 NAM003")]
    [InlineData("rims,is\nsteel,1,2 V\n", "2:1 CSV002")]
    public void A_fault_in_a_table_stands_in_its_line_and_column(string table, string found)
    {
        var diagnostics = Load(table, Sequence).Diagnostics;

        var own = diagnostics.Where(finding => finding.Place.File.EndsWith("table.csv", StringComparison.Ordinal)).ToList();
        Assert.Equal(found, string.Create(System.Globalization.CultureInfo.InvariantCulture, $"{own[0].Place.Line}:{own[0].Place.Column} {own[0].Code}"));
    }

    [Theory]
    [InlineData("rims,is\nsteel,11 .. 12 V\n", "LIM012")]
    [InlineData("rims,tow,is\nsteel,,11 .. 12 V\nalloy,,11 .. 12 V\n,yes,11 .. 12 V\n", "LIM011")]
    public void Every_vehicle_needs_exactly_one_line(string table, string code) =>
        Assert.Contains(Load(table, Sequence).Diagnostics, finding => finding.Code.Id == code);

    [Theory]
    [InlineData("../outside.csv", "LIM020")]
    [InlineData("limits/table.txt", "LIM020")]
    [InlineData("limits/none.csv", "FIL001")]
    public void A_table_is_a_csv_file_in_the_plants_folder(string path, string code)
    {
        WriteType(path);
        Assert.Contains(SequenceLoader.Load(_plant.Put("sequences/odd.yaml", Sequence), ExpressionCache.None).Diagnostics, finding => finding.Code.Id == code);
    }

    private Expectation? Loaded(string table, string sequence = Sequence)
    {
        var result = Load(table, sequence);
        Assert.Equal([], result.Diagnostics.Select(finding => finding.ToString()));
        return ((Step)result.Sequence!.Steps[0]).Expect;
    }

    private LoadResult Load(string table, string sequence)
    {
        WriteType("limits/table.csv");
        _plant.Put("limits/table.csv", table);
        return SequenceLoader.Load(_plant.Put("sequences/odd.yaml", sequence), ExpressionCache.None);
    }

    private void WriteType(string table) => _plant.Put("vehicle-types/teal.yaml", File.ReadAllText(Path.Combine(TestPlant.Good, "vehicle-types/teal.yaml"))
        .Replace("limits:\n", $"limits:\n  table: {{ rows-from: {table} }}\n", StringComparison.Ordinal));
}
