using EolSequencer.Language.Diagnostics;

namespace EolSequencer.Language.Source;

/// <summary>Reads files from disk, each whole or not at all.</summary>
public static class SourceFiles
{
    private const int MostTries = 3;

    /// <summary>Reads one file, or reports why that is not possible and returns <c>null</c>.</summary>
    /// <param name="path">A path as the user typed it; relative ones start at the working folder.</param>
    public static SourceText? TryRead(string path, Report report) => TryRead(path, report, ReadAtMost);

    /// <summary>As above with the reading of the bytes handed in, which lets a test change the file meanwhile.</summary>
    internal static SourceText? TryRead(string path, Report report, Func<string, byte[]> readBytes)
    {
        var shown = ShownPath(path);
        try
        {
            if (Directory.Exists(path))
            {
                report.Add(FileCodes.IsFolder, SourceText.WholeFile(shown), "this is a folder, a file was expected");
                return null;
            }

            if (!File.Exists(path))
            {
                report.Add(FileCodes.Missing, SourceText.WholeFile(shown), "there is no such file");
                return null;
            }

            if (ReadUnchanged(path, readBytes) is { } bytes) return SourceText.TryDecode(shown, bytes, report);
            report.Add(FileCodes.Changing, SourceText.WholeFile(shown), $"the file changed during each of {MostTries} attempts to read it");
        }
        catch (UnauthorizedAccessException)
        {
            report.Add(FileCodes.NotAllowed, SourceText.WholeFile(shown), "the file exists, but reading it is not permitted");
        }
        catch (Exception fault) when (fault is IOException or ArgumentException or NotSupportedException)
        {
            report.Add(FileCodes.Unreadable, SourceText.WholeFile(shown), $"reading failed: {fault.Message}");
        }

        return null;
    }

    private static byte[]? ReadUnchanged(string path, Func<string, byte[]> readBytes)
    {
        for (var attempt = 1; attempt <= MostTries; attempt++)
        {
            var before = StateOf(path);
            var bytes = readBytes(path);
            var after = StateOf(path);
            var isWhole = bytes.Length == after.Length || bytes.Length > SourceText.MostBytes;
            if (before == after && isWhole) return bytes;
        }

        return null;
    }

    private static (long Length, DateTime Written) StateOf(string path)
    {
        var file = new FileInfo(path);
        return (file.Length, file.LastWriteTimeUtc);
    }

    // One byte more than allowed is enough to know that a file is too large.
    private static byte[] ReadAtMost(string path)
    {
        using var file = new FileStream(path, FileMode.Open, FileAccess.Read, FileShare.ReadWrite | FileShare.Delete);
        var bytes = new byte[Math.Min(file.Length, SourceText.MostBytes + 1)];
        var read = file.ReadAtLeast(bytes, bytes.Length, throwOnEndOfStream: false);
        return read == bytes.Length ? bytes : bytes[..read];
    }

    internal static string ShownPath(string path)
    {
        if (path.Length == 0 || path.Contains('\0')) return Shown.Quoted(path);
        var relative = Path.GetRelativePath(Environment.CurrentDirectory, path);
        var isBelow = !Path.IsPathRooted(relative) && relative != ".." && !relative.StartsWith(".." + Path.DirectorySeparatorChar, StringComparison.Ordinal);
        return isBelow ? relative : Path.GetFullPath(path);
    }
}
