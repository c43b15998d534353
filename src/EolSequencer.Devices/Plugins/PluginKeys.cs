using EolSequencer.Devices.VehicleBus;

namespace EolSequencer.Devices.Plugins;

/// <summary>The keys of several plug-ins: the first that knows a unit and level gives its key.</summary>
public sealed class PluginKeys(IEnumerable<IPlugin> plugins) : IKeyAlgorithm
{
    private readonly IReadOnlyList<IKeyAlgorithm> _all = [.. plugins.Select(plugin => plugin.Keys).OfType<IKeyAlgorithm>()];

    public byte[]? KeyOf(string unit, byte level, ReadOnlySpan<byte> seed)
    {
        foreach (var keys in _all)
        {
            if (keys.KeyOf(unit, level, seed) is { } key) return key;
        }

        return null;
    }
}
