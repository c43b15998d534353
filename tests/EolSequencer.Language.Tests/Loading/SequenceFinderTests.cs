using EolSequencer.Language.Expressions;
using EolSequencer.Language.Loading;
using EolSequencer.Language.Tests.Binding;

namespace EolSequencer.Language.Tests.Loading;

/// <summary>The wrong sequence would pass a vehicle that nobody tested: exactly one is in force, or none is run.</summary>
public sealed class SequenceFinderTests : IDisposable
{
    private readonly TestPlant _plant = new();

    public void Dispose() => _plant.Dispose();

    [Theory]
    [InlineData("startup")]
    [InlineData("roller")]
    public void The_only_sequence_for_a_type_and_a_station_kind_is_in_force(string kind)
    {
        var (path, diagnostics) = SequenceFinder.InForce(_plant.PathOf("stations/startup-1.yaml"), "teal", kind);
        Assert.Equal(_plant.PathOf($"sequences/{kind}.yaml"), path);
        Assert.Empty(diagnostics);
    }

    [Theory]
    [InlineData("teal", "water")]
    [InlineData("plum", "startup")]
    public void No_sequence_is_told_with_those_that_there_are(string type, string kind)
    {
        var (path, diagnostics) = SequenceFinder.InForce(_plant.Root, type, kind);
        Assert.Null(path);
        var finding = Assert.Single(diagnostics);
        Assert.Equal("STA007", finding.Code.Id);
        Assert.Contains("'startup' (sequences/startup.yaml) for 'teal' at 'startup'", finding.Found, StringComparison.Ordinal);
    }

    [Fact]
    public void Two_sequences_are_told_with_their_files()
    {
        _plant.Put("old/startup.yaml", "sequence: startup_old\nvehicle-type: teal\nstation-kind: startup\nsteps: []\n");
        var (path, diagnostics) = SequenceFinder.InForce(_plant.Root, "teal", "startup");
        Assert.Null(path);
        var finding = Assert.Single(diagnostics);
        Assert.Equal("STA008", finding.Code.Id);
        Assert.Contains("old/startup.yaml", finding.Found, StringComparison.Ordinal);
        Assert.Contains("sequences/startup.yaml", finding.Found, StringComparison.Ordinal);
    }

    [Fact]
    public void A_sequence_that_cannot_be_read_may_be_the_one_so_none_is_in_force()
    {
        _plant.Put("new/startup.yaml", "sequence: startup_new\nsteps: [\n");
        var (path, diagnostics) = SequenceFinder.InForce(_plant.Root, "teal", "startup");
        Assert.Null(path);
        Assert.EndsWith("new/startup.yaml", Assert.Single(diagnostics).Place.File, StringComparison.Ordinal);
    }

    [Fact]
    public void An_order_for_another_type_does_not_fit_a_sequence()
    {
        var sequence = SequenceLoader.Load(_plant.PathOf("sequences/startup.yaml"), ExpressionCache.None).Sequence!;
        var order = OrderLoader.Load(_plant.PathOf("orders/T-1.yaml"), ExpressionCache.None).Order!;
        Assert.Empty(OrderLoader.CheckType(order, sequence));
        Assert.Equal("ORD012", Assert.Single(OrderLoader.CheckType(order with { VehicleType = "plum" }, sequence)).Code.Id);
    }
}
