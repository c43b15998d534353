namespace EolSequencer.Model.Vehicles;

/// <summary>What a market makes of position 9 of a vehicle identification number.</summary>
/// <remarks>A check digit by 49 CFR 565.15 and CMVSS 115; ISO 3779 leaves the position to the manufacturer.</remarks>
public enum CheckDigitRule
{
    /// <summary>A wrong check digit is refused.</summary>
    Require,

    /// <summary>A wrong check digit is accepted with a warning.</summary>
    Warn,

    /// <summary>Position 9 is a character like any other.</summary>
    Off,
}
