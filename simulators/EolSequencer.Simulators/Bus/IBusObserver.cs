using EolSequencer.Wire.Can;

namespace EolSequencer.Simulators.Bus;

/// <summary>Sees every frame that a simulated bus has carried, to write it down; it sends nothing.</summary>
public interface IBusObserver
{
    /// <summary>A frame has ended.</summary>
    /// <param name="frame">The frame; it may be kept.</param>
    /// <param name="stamp">Its end, as a timestamp of the clock the bus was given.</param>
    void Carried(in CanFrame frame, long stamp);
}
