using EolSequencer.Devices.Adapters;
using EolSequencer.Devices.VehicleBus;

namespace EolSequencer.Devices.Plugins;

/// <summary>
/// What an assembly from outside adds. It has one public class that implements this, with a constructor without
/// parameters, and says with <see cref="PluginContractAttribute"/> which contract it was built for.
/// </summary>
public interface IPlugin
{
    /// <summary>Adapters that station files may then name.</summary>
    IEnumerable<IDeviceAdapter> Adapters { get; }

    /// <summary>Keys of control units; null: it knows none.</summary>
    IKeyAlgorithm? Keys => null;
}
