using System.Globalization;

namespace EolSequencer.Wire.Obd;

/// <summary>Cuts a row of parameters into pieces; only the table knows how long each is.</summary>
internal static class ParameterReader
{
    /// <param name="rest">The answer behind its service byte.</param>
    /// <param name="headLength">Bytes before the data of each parameter: its number, in a freeze frame also the frame's.</param>
    public static Decoded<IReadOnlyList<ParameterData>> Read(ReadOnlyMemory<byte> rest, int headLength)
    {
        var found = new List<ParameterData>();
        while (!rest.IsEmpty)
        {
            var id = rest.Span[0];
            if (ParameterTable.Find(id) is not { } parameter)
            {
                return Faulty(id, "is none of the table, so its length is not known");
            }

            var present = Math.Max(0, rest.Length - headLength);
            if (present < parameter.Length)
            {
                return Faulty(id, $"has a short answer ({present} of {parameter.Length} bytes)");
            }

            found.Add(new ParameterData(id, rest.Slice(headLength, parameter.Length)));
            rest = rest[(headLength + parameter.Length)..];
        }

        return found;
    }

    private static Decoded<IReadOnlyList<ParameterData>> Faulty(byte id, string what) =>
        Decoded<IReadOnlyList<ParameterData>>.Faulty($"parameter {id.ToString("X2", CultureInfo.InvariantCulture)} {what}");
}
