using EolSequencer.Wire.IsoTp;

namespace EolSequencer.Devices.Transport;

/// <summary>Who is told of the messages of one transport address.</summary>
internal interface ITransportListener
{
    /// <summary>The first frame of a message has arrived: what response times are measured to (ISO 15765-3).</summary>
    void Began(long stamp);

    /// <summary>A message is complete.</summary>
    void Received(ReadOnlyMemory<byte> message, long stamp);

    /// <summary>A message that had begun will not be complete.</summary>
    void Aborted(TransportResult result, string detail, long stamp);
}
