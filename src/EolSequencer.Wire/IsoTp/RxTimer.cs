namespace EolSequencer.Wire.IsoTp;

/// <summary>What becomes of a receiver's timer after a step.</summary>
public enum RxTimer
{
    /// <summary>It goes on as it was: the frame did not count.</summary>
    Keep,

    /// <summary>No reception runs.</summary>
    Stop,

    /// <summary>N_Cr starts anew, after the reply was confirmed when there is one; at its end <see cref="MessageReceiver.Expire"/>.</summary>
    NextFrame,

    /// <summary>
    /// The receiver is busy. Within 0.9 × N_Bs of the sender, or as soon as it no longer is,
    /// <see cref="MessageReceiver.Resume"/>.
    /// </summary>
    Busy,
}
