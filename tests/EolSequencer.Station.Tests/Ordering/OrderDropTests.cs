using EolSequencer.Language.Expressions;
using EolSequencer.Language.Loading;
using EolSequencer.Model.Vehicles;
using EolSequencer.Station.Ordering;

namespace EolSequencer.Station.Tests.Ordering;

/// <summary>Orders that come as a table are what a file would have said, a wrong line changes nothing, and nothing is overwritten unasked.</summary>
public sealed class OrderDropTests : IDisposable
{
    private static readonly string Demo = Repository.PathOf("sequences", "demo");
    private static readonly Order[] Orders =
        [.. Directory.GetFiles(Path.Combine(Demo, "orders"), "*.yaml").Order(StringComparer.Ordinal).Select(file => OrderLoader.Load(file, ExpressionCache.None).Order!)];

    private readonly DirectoryInfo _plant = Directory.CreateTempSubdirectory("orders-");

    public OrderDropTests()
    {
        foreach (var file in Directory.GetFiles(Demo, "*", SearchOption.AllDirectories).Where(file => !file.Contains("/orders/", StringComparison.Ordinal)))
        {
            var copy = Path.Combine(_plant.FullName, Path.GetRelativePath(Demo, file));
            Directory.CreateDirectory(Path.GetDirectoryName(copy)!);
            File.Copy(file, copy);
        }
    }

    public void Dispose() => _plant.Delete(recursive: true);

    [Fact]
    public void An_order_as_a_JSON_file_is_taken_like_a_line_of_a_table()
    {
        Take(TableOf(Orders));
        var drop = Path.Combine(_plant.FullName, "..", $"{Path.GetFileName(_plant.FullName)}.json");
        var there = Path.Combine(_plant.FullName, "orders", "FV-100231.json");
        File.Move(there, drop);
        try
        {
            Assert.Equal(["FV-100231"], OrderDrop.Take(drop, _plant.FullName, false, ExpressionCache.None).Taken.Select(order => order.Id));
            Assert.Equal(File.ReadAllText(drop), File.ReadAllText(there));
            Assert.Equal(["FV-100231"], OrderDrop.Take(drop, _plant.FullName, false, ExpressionCache.None).Same.Select(order => order.Id));

            File.WriteAllText(drop, File.ReadAllText(drop).Replace("petrol", "steam", StringComparison.Ordinal));
            var wrong = OrderDrop.Take(drop, _plant.FullName, true, ExpressionCache.None);
            Assert.Empty(wrong.Taken);
            Assert.NotEmpty(wrong.Diagnostics);
            Assert.Contains("petrol", File.ReadAllText(there), StringComparison.Ordinal);
        }
        finally
        {
            File.Delete(drop);
        }
    }

    [Fact]
    public void The_orders_of_the_demo_plant_come_back_as_they_are()
    {
        var result = Take(TableOf(Orders));

        Assert.Empty(result.Diagnostics);
        Assert.Equal(Orders.Length, result.Taken.Count);
        foreach (var order in Orders)
        {
            var read = OrderLoader.LoadFor(_plant.FullName, order.Vin.Text, ExpressionCache.None).Order!;
            Assert.Equal((order.Id, order.Vin, order.VehicleType), (read.Id, read.Vin, read.VehicleType));
            Assert.Equal(order.Options, read.Options);
            Assert.Equal(order.Facts, read.Facts);
        }

        Assert.Equal(Orders.Length, Take(TableOf(Orders)).Same.Count);
    }

    [Theory]
    [InlineData("FV-100231,GFVRRNFP7VF100231", "FV-100231,GFVRRNFP7VF10O231", "ORD001", 2)]
    [InlineData("orrin", "orin", "PLT005", 2)]
    [InlineData("single", "singel", "SYN018", 2)]
    [InlineData("vehicle-type", "vehicle_type", "SYN002", 1)]
    [InlineData("drive,", "drives,", "ORD003", 1)]
    public void A_wrong_line_is_told_at_its_cell_and_gives_no_order(string good, string bad, string code, int line)
    {
        var table = TableOf(Orders[0]);
        var at = table.IndexOf(good, StringComparison.Ordinal);
        var result = Take(table[..at] + bad + table[(at + good.Length)..]);

        Assert.Contains(result.Diagnostics, one => one.Code.Id == code && one.Place.Line == line);
        Assert.Empty(result.Taken);
        Assert.Empty(Files());
    }

    [Fact]
    public void The_other_lines_are_taken()
    {
        var table = TableOf(Orders).Replace("FV-100232", "FV 100232", StringComparison.Ordinal);
        var result = Take(table);
        Assert.Equal(["ORD009"], result.Diagnostics.Select(one => one.Code.Id));
        Assert.Equal(Orders.Length - 1, Files().Length);
    }

    [Fact]
    public void A_vehicle_that_stands_twice_is_told()
    {
        var result = Take(TableOf(Orders[0], Orders[1], Orders[0]));
        Assert.Equal(["ORD011"], result.Diagnostics.Select(one => one.Code.Id));
        Assert.Equal(2, result.Taken.Count);
    }

    [Fact]
    public void An_order_that_is_there_is_kept_unless_it_is_to_be_replaced()
    {
        Take(TableOf(Orders[0]));
        var changed = TableOf(Orders[0]).Replace(",single,", ",double,", StringComparison.Ordinal);
        var (before, file) = (File.ReadAllText(Files()[0]), Files()[0]);

        var kept = Take(changed);
        Assert.Equal(file, Assert.Single(kept.Kept).File);
        Assert.Equal(before, File.ReadAllText(file));

        Assert.Single(Take(changed, replace: true).Taken);
        Assert.Equal("double", OrderLoader.LoadFor(_plant.FullName, Orders[0].Vin.Text, ExpressionCache.None).Order!.Options["doors"].ToString());
        Assert.Single(Files());
    }

    [Theory]
    [InlineData("../../escaped")]
    [InlineData("/etc/escaped")]
    [InlineData("..")]
    public void A_number_leads_nowhere_outside(string number)
    {
        Take(TableOf(Orders[0]).Replace("FV-100231", number, StringComparison.Ordinal));
        Assert.Single(Files());
        Assert.Empty(Directory.GetFiles(_plant.Parent!.FullName, "escaped*"));
    }

    [Theory]
    [InlineData("")]
    [InlineData("order,order\nA,B\n")]
    [InlineData("order,vin\n\"A,B\n")]
    public void What_is_no_table_is_refused(string text)
    {
        var result = Take(text);
        Assert.NotEmpty(result.Diagnostics);
        Assert.Empty(Files());
    }

    private string[] Files() => Directory.Exists(Path.Combine(_plant.FullName, "orders")) ? Directory.GetFiles(Path.Combine(_plant.FullName, "orders")) : [];

    private DropResult Take(string table, bool replace = false)
    {
        var path = Path.Combine(_plant.FullName, "drop.csv");
        File.WriteAllText(path, table);
        return OrderDrop.Take(path, _plant.FullName, replace, ExpressionCache.None);
    }

    private static string TableOf(params Order[] orders)
    {
        var cells = orders.Select(order => new Dictionary<string, string>(
        [
            new("order", order.Id), new("vin", order.Vin.Text), new("vehicle-type", order.VehicleType),
            .. order.Options.Select(option => KeyValuePair.Create(option.Key, option.Value.ToString()!)),
            .. order.Facts.Select(fact => KeyValuePair.Create("order." + fact.Key, fact.Value.ToString()!)),
        ])).ToList();
        var columns = cells.SelectMany(one => one.Keys).Distinct().ToList();
        return string.Join('\n', [string.Join(',', columns), .. cells.Select(one => string.Join(',', columns.Select(column => one.GetValueOrDefault(column, ""))))]) + "\n";
    }
}
