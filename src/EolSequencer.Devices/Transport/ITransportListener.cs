using EolSequencer.Wire.IsoTp;

namespace EolSequencer.Devices.Transport;

/// <summary>Who is told of what arrives at one transport address.</summary>
internal interface ITransportListener
{
    /// <summary>A frame has arrived, so the other side is there.</summary>
    void Heard(long stamp);

    /// <summary>A message is complete.</summary>
    void Received(ReadOnlyMemory<byte> message, long stamp);

    /// <summary>A message that had begun will not be complete.</summary>
    void Aborted(TransportResult result, string detail, long stamp);
}
