using System.Globalization;
using EolSequencer.Wire.Can;

namespace EolSequencer.Devices.Can;

/// <summary>
/// What goes wrong on a CAN link beside its data, counted. The first of each kind is told at once, the numbers of all when the link is
/// closed; a noisy bus does not fill the station's log.
/// </summary>
public sealed class BusHealth
{
    private readonly SortedDictionary<string, long> _counts = new(StringComparer.Ordinal);
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

    internal void CountGarbled(string what) => Count(++Garbled, "garbled", $"the interface has written '{what}', which is no message of its form; is the bit rate of the serial line right?");

    internal void CountOverflow(long times = 1) => Count(ReceiveOverflows += times, "receive overflow", "received frames were lost: the interface or this computer is too slow for the bus", times);

    internal void CountErrors(BusErrors errors)
    {
        if ((errors & BusErrors.ReceiveOverflow) != 0) CountOverflow();
        if ((errors & ~BusErrors.ReceiveOverflow) is var others and not BusErrors.None) Count(++Errors, "bus error", $"errors on the bus: {others}; are its speed, wiring and termination right?");
    }

    internal void CountState(ControllerState state)
    {
        if (state == ControllerState.BusOff) Count(++BusOffs, "bus-off", "the controller has switched itself off after too many errors (bus-off)");
        else if (state != ControllerState.Active) Count(++Warnings, "error limit", $"the controller is near its limits (error {state.ToString().ToLower(CultureInfo.InvariantCulture)})");
    }

    internal void CountRemote() => Remotes++;

    internal void CountFullQueue() => FullQueues++;

    /// <summary>Tells the numbers of all that was counted more than once.</summary>
    internal void TellAll()
    {
        var more = _counts.Where(one => one.Value > 1).Select(one => string.Create(CultureInfo.InvariantCulture, $"{one.Value} x {one.Key}")).ToList();
        if (more.Count > 0) _note($"in all: {string.Join(", ", more)}");
        _counts.Clear();
    }

    private void Count(long number, string name, string first, long times = 1)
    {
        _counts[name] = _counts.GetValueOrDefault(name) + times;
        if (number == times) _note(first);
    }
}
