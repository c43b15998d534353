using EolSequencer.Devices.Can;
using EolSequencer.Devices.VehicleBus;

namespace EolSequencer.Devices.Adapters;

/// <summary>The adapters that come with the program, for stations with real equipment.</summary>
public static class StandardAdapters
{
    /// <param name="keys">Opens security levels of control units; null: none can be opened.</param>
    public static AdapterRegistry Make(IKeyAlgorithm? keys) => new(new SerialCanAdapter(keys));
}
