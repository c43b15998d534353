namespace EolSequencer.Wire.IsoTp;

/// <summary>What becomes of a sender's timer after a step.</summary>
public enum TxTimer
{
    /// <summary>It goes on as it was: the frame did not count.</summary>
    Keep,

    /// <summary>No timer runs.</summary>
    Stop,

    /// <summary>N_Bs starts anew; at its end <see cref="MessageSender.Expire"/>.</summary>
    FlowControl,

    /// <summary>After <see cref="TxStep.Gap"/>, <see cref="MessageSender.Next"/>.</summary>
    Gap,
}
