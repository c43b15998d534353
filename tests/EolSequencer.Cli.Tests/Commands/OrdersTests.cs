using EolSequencer.Cli.Tests.Kit;

namespace EolSequencer.Cli.Tests.Commands;

/// <summary><c>eol orders</c> as somebody types it who has a table from the plant's planning.</summary>
public sealed class OrdersTests : IDisposable
{
    private const string Columns = "order,vin,vehicle-type,rims,order.coding\n";
    private const string Good = "T-1,GFVRRNFP7VF100231,small,steel,AA\n";

    private readonly DirectoryInfo _plant = Directory.CreateTempSubdirectory("orders-");

    public OrdersTests()
    {
        Put("plant.yaml", "plant: small\nzone: UTC\nroute: [startup]\n");
        Put("small.yaml", "vehicle-type: small\noptions: { rims: { one-of: [steel, alloy] } }\norder: { coding: { as: text(8) } }\necus: { gateway: { can: { request: 0x710, response: 0x718 } } }\n");
    }

    public void Dispose() => _plant.Delete(recursive: true);

    [Fact]
    public void A_good_table_is_taken_and_the_second_time_it_is_there()
    {
        Assert.Equal((0, "1 order taken, 0 there already, 0 kept as they are"), Take(Columns + Good));
        Assert.Equal((0, "0 orders taken, 1 there already, 0 kept as they are"), Take(Columns + Good));
        Assert.Equal((2, "0 orders taken, 0 there already, 1 kept as they are"), Take(Columns + Good.Replace("steel", "alloy", StringComparison.Ordinal)));
        Assert.Equal((0, "1 order taken, 0 there already, 0 kept as they are"), Take(Columns + Good.Replace("steel", "alloy", StringComparison.Ordinal), "--replace"));
        Assert.Equal(0, Eol.Run("check", _plant.FullName).Code);
    }

    [Fact]
    public void A_wrong_cell_is_told_at_its_place()
    {
        var outcome = Eol.Run("orders", Put("drop.csv", Columns + Good.Replace("steel", "stele", StringComparison.Ordinal)), "--plant", _plant.FullName);
        Assert.Equal(2, outcome.Code);
        Assert.Contains("drop.csv:2:29: error SYN018", outcome.Output, StringComparison.Ordinal);
    }

    [Fact]
    public void A_table_that_is_not_there_is_told() => Assert.Equal(2, Eol.Run("orders", "no/such.csv", "--plant", _plant.FullName).Code);

    private (int Code, string Last) Take(string table, params string[] more)
    {
        var outcome = Eol.Run(["orders", Put("drop.csv", table), "--plant", _plant.FullName, .. more]);
        return (outcome.Code, outcome.Output.Split('\n', StringSplitOptions.RemoveEmptyEntries)[^1]);
    }

    private string Put(string name, string text)
    {
        var path = Path.Combine(_plant.FullName, name);
        File.WriteAllText(path, text);
        return path;
    }
}
