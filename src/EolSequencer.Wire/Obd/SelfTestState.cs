namespace EolSequencer.Wire.Obd;

/// <summary>How far a self-test has come.</summary>
/// <param name="SelfTest">Which one; only those that the vehicle supports are listed.</param>
/// <param name="IsComplete">True when it has run since the codes were cleared.</param>
public readonly record struct SelfTestState(SelfTest SelfTest, bool IsComplete);
