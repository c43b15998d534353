namespace EolSequencer.Wire.TroubleCodes;

/// <summary>The status byte of a trouble code, and the mask that asks for codes by it.</summary>
/// <remarks>Source: ISO 14229-1, annex D.2, DTC status bits.</remarks>
[Flags]
public enum TroubleCodeStatus : byte
{
    /// <summary>No bit set.</summary>
    None = 0,

    /// <summary>testFailed: the newest test found the fault.</summary>
    TestFailed = 0x01,

    /// <summary>testFailedThisOperationCycle.</summary>
    TestFailedThisOperationCycle = 0x02,

    /// <summary>pendingDTC: found in this or the last operation cycle.</summary>
    Pending = 0x04,

    /// <summary>confirmedDTC: found often enough to be stored.</summary>
    Confirmed = 0x08,

    /// <summary>testNotCompletedSinceLastClear.</summary>
    TestNotCompletedSinceLastClear = 0x10,

    /// <summary>testFailedSinceLastClear.</summary>
    TestFailedSinceLastClear = 0x20,

    /// <summary>testNotCompletedThisOperationCycle.</summary>
    TestNotCompletedThisOperationCycle = 0x40,

    /// <summary>warningIndicatorRequested.</summary>
    WarningIndicatorRequested = 0x80,
}
