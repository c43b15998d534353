using System.Text.Json;
using EolSequencer.Cli.Tests.Kit;

namespace EolSequencer.Cli.Tests.Commands;

/// <summary><c>eol explain</c> as its user types it.</summary>
public sealed class ExplainTests : IDisposable
{
    private const string Startup = "sequences/demo/startup/startup.yaml";
    private const string Station = "sequences/demo/stations/startup.yaml";
    private const string Order = "sequences/demo/orders/FV-100231.yaml";

    private readonly string _page = Path.Combine(Path.GetTempPath(), $"eol-page-{Guid.NewGuid():N}.html");

    public void Dispose() => File.Delete(_page);

    [Fact]
    public void The_sequence_in_force_is_found_by_vehicle_and_station()
    {
        var outcome = Eol.Run("explain", "--station", Station, "--vin", "GFVRRNFP7VF100231", "--language", "es");

        Assert.Equal(0, outcome.Code);
        Assert.Contains("startup revision 1, for GFVRRNFP7VF100231", outcome.Output, StringComparison.Ordinal);
        Assert.Contains("\"Escanee la etiqueta del montante de la puerta.\"", outcome.Output, StringComparison.Ordinal);
        Assert.Contains("instrument M-0417, calibrated until 2027-03-31", outcome.Output, StringComparison.Ordinal);
        Assert.Contains("trailer.plugged: only for vehicle.tow  (here vehicle.tow is no)", outcome.Output, StringComparison.Ordinal);
        Assert.DoesNotContain('\u001b', outcome.Output);
    }

    [Fact]
    public void A_page_goes_into_a_file_and_a_program_reads_json()
    {
        var outcome = Eol.Run("explain", Startup, "--order", Order, "--html", _page, "--json");

        Assert.Equal(0, outcome.Code);
        Assert.StartsWith("<!DOCTYPE html>", File.ReadAllText(_page), StringComparison.Ordinal);
        var json = JsonDocument.Parse(outcome.Output[outcome.Output.IndexOf('{', StringComparison.Ordinal)..outcome.Output.LastIndexOf('}')] + "}").RootElement;
        Assert.Equal("startup", json.GetProperty("sequence").GetString());
        Assert.InRange(json.GetProperty("plannedSeconds").GetDouble(), 60, 360);
    }

    [Theory]
    [InlineData("write SEQUENCE, or --station FILE", "--order", Order)]
    [InlineData("write either --order FILE or --vin VIN", Startup)]
    [InlineData("write either --order FILE or --vin VIN", Startup, "--order", Order, "--vin", "GFVRRNFP7VF100231")]
    [InlineData("ORD", Startup, "--vin", "GFVRRNFP7VF100299")]
    [InlineData("cannot be written", Startup, "--order", Order, "--html", "/no/such/folder/page.html")]
    public void What_cannot_be_done_is_said(string told, params string[] arguments)
    {
        var outcome = Eol.Run(["explain", .. arguments]);

        Assert.Equal(2, outcome.Code);
        Assert.Contains(told, outcome.Output, StringComparison.Ordinal);
    }
}
