namespace EolSequencer.Simulators.Bus;

/// <summary>A simulated participant that wants to know when a frame it sent has gone out.</summary>
internal interface IFrameOwner
{
    /// <summary>The frame has ended at this moment.</summary>
    /// <param name="what">The number that was handed over with the frame.</param>
    void Sent(int what);
}
