using System.Collections.Immutable;

namespace EolSequencer.Devices.Adapters;

/// <summary>The adapters that station files may name.</summary>
public sealed class AdapterRegistry
{
    private readonly Dictionary<string, IDeviceAdapter> _byName = new(StringComparer.Ordinal);

    /// <exception cref="ArgumentException">Two adapters have one name.</exception>
    public AdapterRegistry(params ImmutableArray<IDeviceAdapter> adapters)
    {
        foreach (var adapter in adapters)
        {
            if (!_byName.TryAdd(adapter.Description.Name, adapter)) throw new ArgumentException($"two adapters are called '{adapter.Description.Name}'");
        }

        Names = [.. _byName.Keys.Order(StringComparer.Ordinal)];
    }

    /// <summary>What they are, in the order of their names.</summary>
    public IEnumerable<AdapterDescription> Descriptions => Names.Select(name => _byName[name].Description);

    /// <summary>Their names, in order.</summary>
    public ImmutableArray<string> Names { get; }

    /// <summary>These and others.</summary>
    /// <exception cref="ArgumentException">Two adapters have one name.</exception>
    public AdapterRegistry With(IEnumerable<IDeviceAdapter> others) => new([.. _byName.Values, .. others]);

    /// <summary>The adapter of a name, or null.</summary>
    public IDeviceAdapter? Find(string name) => _byName.GetValueOrDefault(name);
}
