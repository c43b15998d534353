namespace EolSequencer.Wire.Uds;

/// <summary>Who has an output (ISO 14229-1, inputOutputControlParameter).</summary>
public enum ControlParameter : byte
{
    /// <summary>The control unit has it back.</summary>
    ReturnControl = 0x00,
    ResetToDefault = 0x01,
    FreezeCurrentState = 0x02,

    /// <summary>The tester sets it to the state that follows.</summary>
    ShortTermAdjustment = 0x03,
}
