namespace EolSequencer.Wire.Uds;

/// <summary>How long a control unit may take for an answer, counted from the request to the first frame of the answer.</summary>
/// <param name="P2">Until the first answer; on the bus in steps of 1 ms up to 65,535 ms.</param>
/// <param name="P2Star">After each "response pending"; on the bus in steps of 10 ms up to 655,350 ms.</param>
/// <remarks>Source: ISO 14229-1, sessionParameterRecord; defaults ISO 15765-3 and ISO 14229-2.</remarks>
public readonly record struct SessionTiming(TimeSpan P2, TimeSpan P2Star)
{
    /// <summary>The values that hold until a control unit has named its own: 50 ms and 5000 ms.</summary>
    public static SessionTiming Standard { get; } = new(TimeSpan.FromMilliseconds(50), TimeSpan.FromMilliseconds(5000));
}
