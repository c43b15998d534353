namespace EolSequencer.Devices.Adapters;

/// <summary>The physical thing that a role holds while its device is open.</summary>
/// <param name="Name">The same for two roles that mean the same thing, such as <c>serial port /dev/ttyUSB0</c>.</param>
/// <param name="IsShared">
/// True: several roles of the same adapter may use it at once, as several sockets on one CAN interface. False: a second
/// role on it is refused.
/// </param>
public sealed record LinkUse(string Name, bool IsShared);
