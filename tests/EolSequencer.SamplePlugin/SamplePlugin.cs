using EolSequencer.Devices.Adapters;
using EolSequencer.Devices.Plugins;
using EolSequencer.Devices.VehicleBus;

[assembly: PluginContract(PluginContractAttribute.Current)]

namespace EolSequencer.SamplePlugin;

/// <summary>The smallest plug-in that adds an adapter and the key of a control unit.</summary>
public sealed class SamplePlugin : IPlugin
{
    /// <inheritdoc/>
    public IEnumerable<IDeviceAdapter> Adapters => [new CounterAdapter()];

    /// <inheritdoc/>
    public IKeyAlgorithm Keys { get; } = new InvertedSeed();

    /// <summary>Invented: each byte of the seed inverted, for the gateway alone.</summary>
    private sealed class InvertedSeed : IKeyAlgorithm
    {
        public byte[]? KeyOf(string unit, byte level, ReadOnlySpan<byte> seed)
        {
            if (unit != "gateway") return null;
            var key = seed.ToArray();
            for (var i = 0; i < key.Length; i++) key[i] ^= 0xFF;
            return key;
        }
    }
}
