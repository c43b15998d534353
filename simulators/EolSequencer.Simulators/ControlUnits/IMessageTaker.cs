namespace EolSequencer.Simulators.ControlUnits;

/// <summary>Takes the requests that a unit's transport layer has put together.</summary>
internal interface IMessageTaker
{
    /// <summary>A whole request.</summary>
    void Take(ReadOnlyMemory<byte> message, bool isForGroup);

    /// <summary>Nothing is being sent any more.</summary>
    void SendingEnded();
}
