using System.Text;

namespace EolSequencer.Cli.Output;

/// <summary>A text that a user wants in a file of a name of their own.</summary>
internal static class TextFile
{
    /// <summary>Writes UTF-8 without a byte order mark over what was there.</summary>
    /// <returns>Why it could not be written; null when it was.</returns>
    public static string? TryWrite(string path, string text)
    {
        try
        {
            File.WriteAllText(path, text, new UTF8Encoding(false));
            return null;
        }
        catch (Exception fault) when (fault is IOException or UnauthorizedAccessException or ArgumentException or NotSupportedException)
        {
            return $"{path} cannot be written: {fault.Message}";
        }
    }
}
