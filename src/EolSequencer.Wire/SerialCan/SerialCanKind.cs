namespace EolSequencer.Wire.SerialCan;

/// <summary>What a line from a serial-line CAN interface, or to it, says.</summary>
public enum SerialCanKind
{
    /// <summary>Nothing stood before the carriage return: a command was done.</summary>
    Done,

    /// <summary>A bell and nothing before it: a command or frame was refused.</summary>
    Refused,

    /// <summary>A frame that was handed over has been taken for the bus (<c>z</c>, or <c>Z</c> for 29 bits).</summary>
    Sent,

    /// <summary>A data frame.</summary>
    Frame,

    /// <summary>A remote frame, which carries no data.</summary>
    Remote,

    /// <summary>Errors that the interface has seen on the bus.</summary>
    Errors,

    /// <summary>The interface's controller has changed its state.</summary>
    State,

    /// <summary>Something else that is whole, such as a command or the answer to a question.</summary>
    Other,

    /// <summary>A line that is none: cut, too long, or with characters that do not belong there.</summary>
    Garbled,
}
