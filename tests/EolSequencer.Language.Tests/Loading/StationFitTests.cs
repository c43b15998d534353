using EolSequencer.Language.Expressions;
using EolSequencer.Language.Loading;
using EolSequencer.Language.Tests.Binding;
using EolSequencer.Model.Plants;

namespace EolSequencer.Language.Tests.Loading;

/// <summary>A station without an adapter for a role is told before a vehicle stands on it.</summary>
public sealed class StationFitTests : IDisposable
{
    private readonly TestPlant _plant = new();

    public void Dispose() => _plant.Dispose();

    [Fact]
    public void A_station_keeps_its_adapters_settings_as_they_were_written()
    {
        var station = StationLoader.Load(_plant.PathOf("stations/startup-1.yaml")).Station!;
        var meter = station.Find("meter")!;

        Assert.Equal(Path.GetFullPath(Path.Combine(_plant.Root, "../eol-data")), station.DataFolder);
        Assert.Equal("*", Assert.IsType<Setting.Scalar>(station.Scanner!.Settings.Find("prefix")).Text);
        Assert.Equal(("scpi", new DateOnly(2027, 3, 31)), (meter.Adapter.Adapter, meter.Instrument!.CalibrationDue));
        Assert.Equal(["wired-to", "channels", "ranges"], meter.Adapter.Settings.Entries.Select(entry => entry.Name));
        var query = Assert.IsType<Setting.Map>(meter.Adapter.Settings.Find("channels")).Entries.Single();
        Assert.Equal(("voltage", "MEAS:VOLT?", 7), (query.Name, query.Value.ToString(), query.NamePlace.Line));
        Assert.Equal(["1", "10"], Assert.IsType<Setting.List>(meter.Adapter.Settings.Find("ranges")).Items.Select(item => item.ToString()));
    }

    [Fact]
    public void A_role_without_an_adapter_and_another_station_kind_are_reported()
    {
        var station = StationLoader.Load(_plant.PathOf("stations/startup-1.yaml")).Station!;
        var startUp = SequenceLoader.Load(_plant.PathOf("sequences/startup.yaml"), ExpressionCache.None).Sequence!;
        var roller = SequenceLoader.Load(_plant.PathOf("sequences/roller.yaml"), ExpressionCache.None).Sequence!;

        Assert.Empty(StationFit.Check(station, startUp));
        Assert.Equal(["STA006", "STA005"], StationFit.Check(station, roller).Select(one => one.Code.Id));
    }
}
