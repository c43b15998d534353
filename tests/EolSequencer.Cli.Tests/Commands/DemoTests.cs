using EolSequencer.Cli.Tests.Kit;

namespace EolSequencer.Cli.Tests.Commands;

/// <summary>The first thing a newcomer types; it must show a pass, a fail and an error, and say what comes next.</summary>
public sealed class DemoTests : IDisposable
{
    private readonly Eol _eol = new();

    [Fact]
    public void Three_vehicles_come_out_as_they_should()
    {
        var demo = Eol.Run("demo", "--data", _eol.Data);
        Assert.True(demo.Code == 0, demo.ToString());
        Assert.Contains("3 of 3 vehicles came out as they should; the record is whole.", demo.Output, StringComparison.Ordinal);
        Assert.Contains("PASS", demo.Output, StringComparison.Ordinal);
        Assert.Contains("lights.rear  tail_left", demo.Output, StringComparison.Ordinal);
        Assert.Contains("rest.voltage", demo.Output, StringComparison.Ordinal);
    }

    public void Dispose() => _eol.Dispose();
}
