using EolSequencer.Records.Stations;
using EolSequencer.Records.Tests.Samples;

namespace EolSequencer.Records.Tests.Stations;

/// <summary>Two programs that run one station would mix their vehicles; the second must be told so before it begins.</summary>
[Trait("case", "LOG-02")]
public sealed class StationHoldTests : IDisposable
{
    private readonly TempFolder _folder = new();

    [Fact]
    public void The_second_to_come_is_told_which_process_has_the_station()
    {
        using var first = _folder.Take("startup_1");

        var refused = Assert.IsType<StationResult.Refused>(_folder.Open().TakeStation("startup_1"));

        Assert.Equal(Environment.ProcessId, refused.Process);
        Assert.Contains($"in use by process {Environment.ProcessId} since 20", refused.Why);
    }

    [Fact]
    public void Another_station_is_free()
    {
        using var first = _folder.Take("startup_1");
        using var second = _folder.Take("startup_2");

        Assert.Equal("startup_2", second.Station);
    }

    [Fact]
    public void A_station_that_was_given_back_is_free()
    {
        _folder.Take("startup_1").Dispose();

        _folder.Take("startup_1").Dispose();
    }

    [Theory]
    [InlineData("")]
    [InlineData("1st")]
    [InlineData("../startup")]
    [InlineData("start up")]
    public void What_is_no_id_is_a_broken_assumption(string station) =>
        Assert.Throws<ArgumentException>(() => _folder.Open().TakeStation(station));

    [Fact]
    public void A_folder_that_lets_no_lock_be_made_is_refused()
    {
        var folder = _folder.Open();
        File.WriteAllText(Path.Combine(_folder.Path, "stations"), "in the way");

        Assert.Null(Assert.IsType<StationResult.Refused>(folder.TakeStation("startup_1")).Process);
    }

    public void Dispose() => _folder.Dispose();
}
