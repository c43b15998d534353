using EolSequencer.Devices.Adapters;

namespace EolSequencer.Devices.Tests.Adapters;

/// <summary>Names of adapters as station files write them; two of one name would let the order of loading decide.</summary>
public class AdapterRegistryTests
{
    [Fact]
    public void Adapters_are_found_by_their_exact_names()
    {
        var scpi = new Named("scpi");
        var registry = new AdapterRegistry(new Named("socket-can"), scpi);
        Assert.Equal(["scpi", "socket-can"], registry.Names);
        Assert.Same(scpi, registry.Find("scpi"));
        Assert.Null(registry.Find("SCPI"));
    }

    [Fact]
    public void Two_of_one_name_are_refused() =>
        Assert.Contains("'scpi'", Assert.Throws<ArgumentException>(() => new AdapterRegistry(new Named("scpi"), new Named("scpi"))).Message, StringComparison.Ordinal);

    private sealed class Named(string name) : IDeviceAdapter
    {
        public AdapterDescription Description { get; } = new(name, "a test's own");

        public ValueTask<AdapterOpening> OpenAsync(AdapterRequest request, CancellationToken cancel) => new(AdapterOpening.Refused("never opened here"));
    }
}
