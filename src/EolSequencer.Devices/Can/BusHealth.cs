using System.Globalization;
using EolSequencer.Wire.Can;

namespace EolSequencer.Devices.Can;

/// <summary>
/// What goes wrong on a CAN link beside its data, counted. The first of each kind is told at once, the numbers of all when the link is
/// closed; a noisy bus does not fill the station's log.
/// </summary>
public sealed class BusHealth
{
    private readonly Action<string> _note;

    /// <param name="note">Told what whoever looks after the station should know.</param>
    public BusHealth(Action<string> note) => _note = note;

    /// <summary>Messages of the interface that could not be read.</summary>
    public long Garbled { get; private set; }

    /// <summary>Times that the interface or the computer lost received frames.</summary>
    public long ReceiveOverflows { get; private set; }

    /// <summary>Error messages of the interface.</summary>
    public long Errors { get; private set; }

    /// <summary>Times that the controller has told it is near its limits (error warning, error passive).</summary>
    public long Warnings { get; private set; }

    /// <summary>Times that the controller has switched itself off.</summary>
    public long BusOffs { get; private set; }

    /// <summary>Remote frames, which nobody waits for.</summary>
    public long Remotes { get; private set; }

    /// <summary>Frames that were given back because a transmit queue was full, each time they were.</summary>
    public long FullQueues { get; private set; }

    internal void CountGarbled(string what) => TellFirst(++Garbled, $"the interface has written '{what}', which is no message of its form; is the bit rate of the serial line right?");

    internal void CountOverflow(long times = 1) => TellFirst((ReceiveOverflows += times) - times + 1, "received frames were lost: the interface or this computer is too slow for the bus");

    internal void CountErrors(BusErrors errors)
    {
        if ((errors & BusErrors.ReceiveOverflow) != 0) CountOverflow();
        if ((errors & ~BusErrors.ReceiveOverflow) is var others and not BusErrors.None) TellFirst(++Errors, $"errors on the bus: {others}; are its speed, wiring and termination right?");
    }

    internal void CountState(ControllerState state)
    {
        if (state == ControllerState.BusOff) TellFirst(++BusOffs, "the controller has switched itself off after too many errors (bus-off)");
        else if (state != ControllerState.Active) TellFirst(++Warnings, $"the controller is near its limits (error {state.ToString().ToLower(CultureInfo.InvariantCulture)})");
    }

    internal void CountRemote() => Remotes++;

    internal void CountFullQueue() => FullQueues++;

    /// <summary>Tells the numbers of all that was told once and came more often; when the link is closed.</summary>
    internal void TellAll()
    {
        (long Number, string Name)[] all = [(Errors, "bus error"), (BusOffs, "bus-off"), (Warnings, "error limit"), (Garbled, "garbled"), (ReceiveOverflows, "receive overflow")];
        var more = all.Where(one => one.Number > 1).Select(one => string.Create(CultureInfo.InvariantCulture, $"{one.Number} x {one.Name}")).ToList();
        if (more.Count > 0) _note($"in all: {string.Join(", ", more)}");
    }

    /// <param name="number">Which one of its kind it is, or the first of several.</param>
    private void TellFirst(long number, string what)
    {
        if (number == 1) _note(what);
    }
}
