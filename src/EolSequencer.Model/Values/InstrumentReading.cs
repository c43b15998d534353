namespace EolSequencer.Model.Values;

/// <summary>What an instrument's answer to a query for a number turned out to be.</summary>
public abstract record InstrumentReading
{
    private InstrumentReading() { }

    /// <summary>A number.</summary>
    /// <param name="Value">Exactly as sent; digits beyond the 28th decimal place are rounded.</param>
    public sealed record Number(decimal Value) : InstrumentReading
    {
        /// <summary>True when it may stand where a whole number is wanted, as 4.0000E+03 may.</summary>
        public bool IsWhole => decimal.Truncate(Value) == Value;
    }

    /// <summary>Beyond the measuring range; no reading, cause overload.</summary>
    /// <param name="High">True above the range, false below.</param>
    public sealed record Overload(bool High) : InstrumentReading;

    /// <summary>The instrument says that it has no number; no reading, cause not-finite.</summary>
    public sealed record NotANumber : InstrumentReading;

    /// <summary>The text is no number.</summary>
    public sealed record Malformed(string Why) : InstrumentReading;
}
