using EolSequencer.Cli.Tests.Kit;

namespace EolSequencer.Cli.Tests.Commands;

/// <summary>Slips of the command line and of files have a clear message and an exit code, never a stack trace.</summary>
public sealed class BadInputTests : IDisposable
{
    private readonly Eol _eol = new();

    [Theory]
    [InlineData("run", "no/such.yaml")]
    [InlineData("run", "sequences/demo")]
    [InlineData("run", "tests/EolSequencer.Cli.Tests/Kit/binary.dat")]
    [InlineData("check", "no/such.yaml")]
    public void A_file_that_is_none_is_told_and_ends_with_2(string command, string file)
    {
        if (file.EndsWith("binary.dat", StringComparison.Ordinal)) file = Binary();
        string[] args = command == "run"
            ? ["run", file, "--station", "sequences/demo/stations/startup.yaml", "--order", "sequences/demo/orders/FV-100231.yaml", "--data", _eol.Data]
            : ["check", file];
        Refused(Eol.Run(args), 2, Path.GetFileName(file));
    }

    [Fact]
    public void A_number_with_characters_it_cannot_have_is_refused_by_position()
    {
        var order = File.ReadAllText(Path.Combine(Repository.Root, "sequences/demo/orders/FV-100231.yaml"));
        var vin = order.Split('\n').First(line => line.StartsWith("vin:", StringComparison.Ordinal))["vin:".Length..].Split('#')[0].Trim();
        Refused(RunWithOrder(order.Replace(vin, "O" + vin[1..], StringComparison.Ordinal)), 2, "position 1");
    }

    [Fact]
    public void A_wrong_check_digit_is_refused_and_the_right_one_named()
    {
        var order = File.ReadAllText(Path.Combine(Repository.Root, "sequences/demo/orders/FV-100231.yaml"));
        var vin = order.Split('\n').First(line => line.StartsWith("vin:", StringComparison.Ordinal))["vin:".Length..].Split('#')[0].Trim();
        var wrong = vin[..16] + (vin[16] == '9' ? '8' : (char)(vin[16] + 1));
        Refused(RunWithOrder(order.Replace(vin, wrong, StringComparison.Ordinal)), 2, "check digit");
    }

    [Fact]
    public void A_vehicle_without_an_order_is_not_run() => Refused(_eol.Startup("--vin", "11111111111111111"), 2, "no order");

    [Fact]
    public void An_adapter_that_is_not_there_is_told_with_those_that_are()
    {
        var station = Path.Combine(Repository.Root, "sequences", "demo", "stations", "startup.yaml");
        var other = InPlant("stations/bad.yaml", File.ReadAllText(station).Replace("simulated-sound-meter", "simulated-loudness", StringComparison.Ordinal));
        Refused(_eol.Startup("--station", other.Station, "--order", other.Order), 3, "simulated-sound-meter");
        var log = File.ReadAllText(Assert.Single(Directory.GetFiles(Path.Combine(_eol.Data, "log"))));
        Assert.Contains("WRN refused: ", log, StringComparison.Ordinal);
    }

    [Fact]
    public void Times_that_a_station_fixes_are_kept_and_what_units_state_stands_in_the_log()
    {
        var station = File.ReadAllText(Path.Combine(Repository.Root, "sequences", "demo", "stations", "startup.yaml"));
        var other = InPlant("stations/bad.yaml", station.Replace("adapter: simulated-vehicle", "adapter: simulated-vehicle, p2: 700 ms", StringComparison.Ordinal));
        Assert.Equal(0, _eol.Startup("--station", other.Station, "--order", other.Order, "--only", "rest").Code);
        var log = File.ReadAllText(Assert.Single(Directory.GetFiles(Path.Combine(_eol.Data, "log"))));
        Assert.Contains("bus: gateway states times that make P2 ", log, StringComparison.Ordinal);
        Assert.Contains("the station's 700 ms and 5050 ms hold", log, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("p2: 70", "70")]
    [InlineData("p2: 70 V", "70 V")]
    [InlineData("p2: 0 ms", "0 ms")]
    [InlineData("p3: 70 ms", "p3")]
    public void A_setting_that_an_adapter_cannot_read_is_told_with_its_place(string setting, string mentions)
    {
        var station = File.ReadAllText(Path.Combine(Repository.Root, "sequences", "demo", "stations", "startup.yaml"));
        var other = InPlant("stations/bad.yaml", station.Replace("adapter: simulated-vehicle", $"adapter: simulated-vehicle, {setting}", StringComparison.Ordinal));
        Refused(_eol.Startup("--station", other.Station, "--order", other.Order), 3, mentions);
    }

    [Fact]
    public void A_data_folder_that_is_a_file_is_refused()
    {
        File.WriteAllText(_eol.Data, "");
        try
        {
            Refused(_eol.Startup("--only", "rest"), 2, "is a file");
        }
        finally
        {
            File.Delete(_eol.Data);
        }
    }

    [Theory]
    [InlineData("lamp_opne=tail_left", "lamp_open")]
    [InlineData("lamp_open=tail_lft", "tail_left")]
    public void A_fault_that_is_none_is_told_with_the_nearest(string fault, string nearest) => Refused(_eol.Startup("--inject", fault), 2, nearest);

    [Theory]
    [InlineData("trailer_not_seen", "the vehicle of order FV-100231 has no such part")]
    [InlineData("ignores=body.hod", "this vehicle has no step 'body.hod' – nearest that it can be put into: body.hood")]
    [InlineData("misjudges=body.hood", "at step 'body.hood' there is nothing for a person that could go wrong like this")]
    public void A_fault_that_nothing_can_show_is_refused(string fault, string why) => Refused(_eol.Startup("--inject", fault), 2, why);

    [Theory]
    [InlineData("--clock", "slow")]
    [InlineData("--nonsense", "1")]
    public void A_wrong_command_line_ends_with_2(string option, string value) => Assert.Equal(2, _eol.Startup(option, value).Code);

    public void Dispose() => _eol.Dispose();

    private static void Refused(Eol.Outcome outcome, int code, string mentions)
    {
        Assert.True(outcome.Code == code, outcome.ToString());
        Assert.Contains(mentions, outcome.Output, StringComparison.Ordinal);
        Assert.DoesNotContain("   at ", outcome.Output, StringComparison.Ordinal);
    }

    private string Binary()
    {
        Directory.CreateDirectory(_eol.Data);
        var file = Path.Combine(_eol.Data, "binary.dat");
        File.WriteAllBytes(file, [.. Enumerable.Range(0, 4096).Select(number => (byte)(number * 37))]);
        return file;
    }

    private Eol.Outcome RunWithOrder(string order)
    {
        var plant = InPlant("orders/bad.yaml", order.Replace("order: FV-100231", "order: FV-999999", StringComparison.Ordinal));
        return _eol.Startup("--station", plant.Station, "--order", Path.Combine(plant.Root, "orders", "bad.yaml"));
    }

    /// <summary>A copy of the demo plant with one more file.</summary>
    private (string Root, string Station, string Order) InPlant(string path, string text)
    {
        var from = Path.Combine(Repository.Root, "sequences", "demo");
        var root = Path.Combine(_eol.Data, "plant");
        foreach (var file in Directory.GetFiles(from, "*", SearchOption.AllDirectories))
        {
            var copy = Path.Combine(root, Path.GetRelativePath(from, file));
            Directory.CreateDirectory(Path.GetDirectoryName(copy)!);
            File.Copy(file, copy);
        }

        File.WriteAllText(Path.Combine(root, path), text.Replace("station: startup_1", "station: startup_bad", StringComparison.Ordinal));
        return (root, Path.Combine(root, path.StartsWith("stations", StringComparison.Ordinal) ? path : "stations/startup.yaml"), Path.Combine(root, "orders", "FV-100231.yaml"));
    }
}
