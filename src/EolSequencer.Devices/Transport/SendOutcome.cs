using EolSequencer.Wire.Can;
using EolSequencer.Wire.IsoTp;

namespace EolSequencer.Devices.Transport;

/// <summary>How the sending of a message ended.</summary>
/// <param name="Stamp">The end of the last frame, or when it was clear that the message would not go out.</param>
/// <param name="Link">What kept a frame from going out; up otherwise.</param>
/// <param name="Detail">For people; null when all went well.</param>
internal readonly record struct SendOutcome(TransportResult Result, long Stamp, LinkState Link, string? Detail)
{
    public bool IsOk => Result == TransportResult.Ok;
}
