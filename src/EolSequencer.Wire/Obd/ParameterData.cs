namespace EolSequencer.Wire.Obd;

/// <summary>The bytes of one parameter in an answer.</summary>
/// <param name="Id">The parameter.</param>
/// <param name="Data">Its data bytes, as many as the table says.</param>
public readonly record struct ParameterData(byte Id, ReadOnlyMemory<byte> Data);
