using System.Collections.Immutable;

namespace EolSequencer.Devices.Adapters;

/// <summary>The adapters that station files may name.</summary>
public sealed class AdapterRegistry(params ImmutableArray<IDeviceAdapter> adapters)
{
    /// <summary>Their names, in order.</summary>
    public ImmutableArray<string> Names { get; } = [.. adapters.Select(adapter => adapter.Name).Order(StringComparer.Ordinal)];

    /// <summary>The adapter of a name, or null.</summary>
    public IDeviceAdapter? Find(string name) => adapters.FirstOrDefault(adapter => adapter.Name == name);
}
