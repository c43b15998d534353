namespace EolSequencer.Devices.Plugins;

/// <summary>
/// Says which contract a plug-in was built for: <c>[assembly: PluginContract(PluginContractAttribute.Current)]</c>. The
/// number is written into the plug-in when it is compiled, so that one built for another contract is told before any of its
/// code runs.
/// </summary>
[AttributeUsage(AttributeTargets.Assembly)]
public sealed class PluginContractAttribute(int version) : Attribute
{
    /// <summary>The contract of this program; counted up with every change that an adapter built before would not survive.</summary>
    public const int Current = 1;

    /// <summary>The contract that the plug-in was built for.</summary>
    public int Version => version;
}
