namespace EolSequencer.Wire.TroubleCodes;

/// <summary>Which list the three bytes of a code come from (ISO 14229-1, DTC format identifier).</summary>
public enum TroubleCodeFormat : byte
{
    /// <summary>SAE J2012-DA, format 00.</summary>
    J2012Format00 = 0,

    /// <summary>ISO 14229-1: the third byte is the maker's.</summary>
    Iso14229 = 1,

    /// <summary>SAE J1939-73.</summary>
    J1939 = 2,

    /// <summary>ISO 11992-4.</summary>
    Iso11992 = 3,

    /// <summary>SAE J2012-DA, format 04.</summary>
    J2012Format04 = 4,
}
