namespace EolSequencer.Wire.Can;

/// <summary>How an attempt to put a frame on the bus ended.</summary>
/// <param name="Link"><see cref="LinkState.Up"/>, or the state of the link that kept the frame from going out.</param>
/// <param name="Stamp">The end of the frame, or the moment at which it was clear that it would not go out.</param>
public readonly record struct Transmission(LinkState Link, long Stamp)
{
    /// <summary>True when the frame went out and was acknowledged on the bus.</summary>
    public bool IsConfirmed => Link == LinkState.Up;

    /// <summary>The frame went out.</summary>
    /// <param name="stamp">The end of the frame.</param>
    public static Transmission Confirmed(long stamp) => new(LinkState.Up, stamp);
}
