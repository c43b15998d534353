namespace EolSequencer.Wire.Scpi;

/// <summary>What an instrument answers to <c>*IDN?</c>.</summary>
/// <param name="Maker">Who made it.</param>
/// <param name="Model">Its type.</param>
/// <param name="Serial">Its number; 0 where it has none.</param>
/// <param name="Version">Of its software; 0 where it has none.</param>
/// <remarks>Source: IEEE 488.2-1992, 10.14: four fields separated by commas, the last of which runs to the end.</remarks>
public sealed record ScpiIdentity(string Maker, string Model, string Serial, string Version)
{
    /// <summary>The query.</summary>
    public const string Query = "*IDN?";

    private const int Fields = 4;

    /// <summary>Reads the answer; a fault when it has fewer than four fields.</summary>
    public static Decoded<ScpiIdentity> Read(ReadOnlySpan<byte> answer)
    {
        if (ScpiFields.Text(answer) is not { Fault: null, Value: var text }) return Decoded<ScpiIdentity>.Faulty($"'{TextLines.ControlBytes.Show(answer)}' is no identity");
        return text.Split(',', Fields, StringSplitOptions.TrimEntries) is [var maker, var model, var serial, var version]
            ? new ScpiIdentity(maker, model, serial, version)
            : Decoded<ScpiIdentity>.Faulty($"'{text}' is no identity; MAKER,MODEL,SERIAL,VERSION is due");
    }

    /// <summary>As the instrument says it.</summary>
    public override string ToString() => $"{Maker},{Model},{Serial},{Version}";
}
