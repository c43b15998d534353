using System.Diagnostics;
using EolSequencer.Language.Expressions;
using EolSequencer.Model.Values;
using EolSequencer.Station.Identifying;
using EolSequencer.Station.Ordering;
using EolSequencer.Station.Tests.Identifying;

namespace EolSequencer.Station.Tests.Ordering;

/// <summary>An order that comes over the network is a whole order of the vehicle asked for, or there is no run and nothing of it is kept.</summary>
public sealed class OrderAskingTests : IDisposable
{
    private const string Vin = "TESTVXN08AA000018";
    private const string Order = $$"""{ "order": "S-2", "vin": "{{Vin}}", "vehicle-type": "box", "options": { "tow": true } }""";

    private readonly SmallPlant _plant = new();

    public void Dispose() => _plant.Dispose();

    [Fact]
    public void A_vehicle_of_which_the_plant_has_no_order_is_asked_for()
    {
        using var host = new ScriptedHost(ScriptedHost.Json(Order));
        var vehicle = Ask(host.Url).Vehicle!;

        Assert.Equal(("S-2", Vin, "brief"), (vehicle.Order.Id, vehicle.Order.Vin.Text, vehicle.Sequence.Id));
        Assert.Equal(TruthValue.Of(true), vehicle.Order.Options["tow"]);
        Assert.Equal([$"GET /orders/{Vin} HTTP/1.1"], host.Asked);
        Assert.Single(Directory.GetFiles(_plant.PathOf("orders")));
    }

    [Fact]
    public void An_order_of_the_plant_goes_first_and_nobody_is_asked()
    {
        using var host = new ScriptedHost(ScriptedHost.Json(Order));
        Assert.Equal("S-1", Ask(host.Url, SmallPlant.Vin).Vehicle!.Order.Id);

        // One with a mistake is not passed by either.
        _plant.Put("orders/S-1.yaml", $"order: S-1\nvin: {SmallPlant.Vin}\nvehicle-type: box\noptions: {{ roof: no }}\n");
        Assert.Null(Ask(host.Url, SmallPlant.Vin).Vehicle);
        Assert.Empty(host.Asked);
    }

    public static TheoryData<string, string, string> Refusals => new()
    {
        { ScriptedHost.Json("{}", "404 Not Found"), "ORD014", "there is no order for this vehicle either (404)" },
        { ScriptedHost.Json("{}", "500 Internal Server Error"), "ORD014", "it answers 500 Internal Server Error, 200 is expected" },
        { ScriptedHost.Json("", "204 No Content"), "ORD014", "it answers 204" },
        { "HTTP/1.1 302 Found\r\nLocation: http://127.0.0.1:9/else\r\nContent-Length: 0\r\n\r\n", "ORD014", "it leads elsewhere (302), to http://127.0.0.1:9/else; that is not followed" },
        { ScriptedHost.Json(Order, type: "text/html"), "ORD014", "it answers with text/html, application/json is expected" },
        { $"HTTP/1.1 200 OK\r\nContent-Length: {Order.Length}\r\nConnection: close\r\n\r\n{Order}", "ORD014", "nothing that says what it is" },
        { ScriptedHost.Json(Order[..^3]), "ORD014", "the answer is no JSON" },
        { ScriptedHost.Json($"[{Order}]"), "ORD014", "the answer is no JSON object" },
        { ScriptedHost.Json("order: S-2"), "ORD014", "the answer is no JSON" },
        { ScriptedHost.Json($"{{ \"order\": \"{new string('x', OrderAsking.MostBytes)}\" }}"), "ORD014", "more than 256 KiB" },
        { $"HTTP/1.1 200 OK\r\nContent-Type: application/json\r\nConnection: close\r\n\r\n{new string(' ', OrderAsking.MostBytes)}{Order}", "ORD014", "more than 256 KiB" },
        { ScriptedHost.Json(Order)[..^20], "ORD014", "" },
        { "nonsense\r\n\r\n", "ORD014", "" },
        { ScriptedHost.Json(Order.Replace(Vin, SmallPlant.Vin, StringComparison.Ordinal)), "ORD013", $"'{Vin}' was asked for, this is '{SmallPlant.Vin}'" },
        { ScriptedHost.Json(Order.Replace("tow", "roof", StringComparison.Ordinal)), "ORD003", "no option 'roof'" },
        { ScriptedHost.Json(Order.Replace("\"box\"", "\"bag\"", StringComparison.Ordinal)), "PLT005", "'bag'" },
        { ScriptedHost.Json(Order.Replace("\"S-2\"", "\"S-2\\u0000'; DROP TABLE run\"", StringComparison.Ordinal)), "ORD009", "cannot be the number of an order" },
        { ScriptedHost.Json(Order.Replace("\"options\"", "\"order\": \"S-3\", \"options\"", StringComparison.Ordinal)), "YML", "" },
    };

    [Theory]
    [MemberData(nameof(Refusals))]
    public void Any_other_answer_is_no_run_and_says_why(string answer, string code, string words)
    {
        using var host = new ScriptedHost(answer);
        var found = Ask(host.Url);

        Assert.Null(found.Vehicle);
        var finding = found.Diagnostics.First(one => one.Code.Id.StartsWith(code, StringComparison.Ordinal));
        Assert.Contains(words, finding.ToString(), StringComparison.Ordinal);
        Assert.Contains($"/orders/{Vin}", finding.ToString(), StringComparison.Ordinal);
        Assert.Single(Directory.GetFiles(_plant.PathOf("orders")));
    }

    [Fact]
    public void Nobody_waits_longer_than_the_limit()
    {
        using var silent = new ScriptedHost(null);
        var clock = Stopwatch.StartNew();
        Assert.Contains("no whole answer within 0.2 s", Ask(silent.Url, within: "200 ms").Diagnostics.Single().ToString(), StringComparison.Ordinal);

        using var endless = new ScriptedHost($"HTTP/1.1 200 OK\r\nContent-Type: application/json\r\nContent-Length: 900\r\n\r\n{Order}");
        Assert.Equal("ORD014", Ask(endless.Url, within: "200 ms").Diagnostics.Single().Code.Id);
        Assert.InRange(clock.Elapsed, TimeSpan.Zero, TimeSpan.FromSeconds(20));
    }

    [Fact]
    public void A_host_that_is_not_there_is_told()
    {
        string url;
        using (var gone = new ScriptedHost(null)) url = gone.Url;
        Assert.Equal("ORD014", Ask(url).Diagnostics.Single().Code.Id);
    }

    [Theory]
    [InlineData("../../secrets")]
    [InlineData("TESTVXN09AA00001 ")]
    [InlineData("TESTVXN0?A=000018")]
    public void What_is_no_number_is_asked_of_nobody(string typed)
    {
        using var host = new ScriptedHost(ScriptedHost.Json(Order));
        Assert.Contains("so nobody was asked", Ask(host.Url, typed).Diagnostics.Single().ToString(), StringComparison.Ordinal);
        Assert.Empty(host.Asked);
    }

    private Identified Ask(string url, string vin = Vin, string within = "10 s")
    {
        _plant.Put("station.yaml", SmallPlant.Station("startup") + $"orders-from: {{ url: \"{url}\", within: {within} }}\n");
        return Identify.Vehicle(new IdentifyRequest { StationFile = _plant.PathOf("station.yaml"), Vin = vin, Cache = ExpressionCache.None });
    }
}
