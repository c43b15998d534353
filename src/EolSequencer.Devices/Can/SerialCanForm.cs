namespace EolSequencer.Devices.Can;

/// <summary>How a serial-line CAN interface is used.</summary>
/// <param name="Rate">Bits per second on the bus, one of those that have a command.</param>
/// <param name="Answers">
/// Whether it answers commands and frames, as most do. False: a frame counts as sent once the serial port has it, and nobody
/// learns of a full queue.
/// </param>
public sealed record SerialCanForm(int Rate, bool Answers = true);
