namespace EolSequencer.Wire.TroubleCodes;

/// <summary>A trouble code as a control unit keeps it.</summary>
/// <param name="Code">The code; three bytes in ISO 14229-1 services.</param>
/// <param name="Status">Its status.</param>
public readonly record struct StoredCode(TroubleCode Code, TroubleCodeStatus Status);
