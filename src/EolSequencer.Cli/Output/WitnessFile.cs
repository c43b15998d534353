using System.Text;
using EolSequencer.Records.Witnessing;

namespace EolSequencer.Cli.Output;

/// <summary>Reads a witness that was kept in a file.</summary>
internal static class WitnessFile
{
    /// <summary>The witness; null with the reason when the file cannot be read or is none.</summary>
    public static LedgerWitness? Read(string path, out string? fault)
    {
        try
        {
            using var reader = new StreamReader(path, Encoding.UTF8);
            var text = new StringBuilder();
            var block = new char[1 << 16];
            while (text.Length <= WitnessText.Longest && reader.ReadBlock(block) is > 0 and var length) text.Append(block, 0, length);
            if (text.Length > WitnessText.Longest) fault = $"{path} is too long for a witness";
            else if (WitnessText.Parse(text.ToString(), out var why) is { } witness)
            {
                fault = null;
                return witness;
            }
            else fault = $"{path} is no witness: {why}";
        }
        catch (Exception trouble) when (trouble is IOException or UnauthorizedAccessException or ArgumentException or NotSupportedException)
        {
            fault = $"'{path.Replace("\0", "\\0", StringComparison.Ordinal)}' cannot be read: {trouble.Message}";
        }

        return null;
    }
}
