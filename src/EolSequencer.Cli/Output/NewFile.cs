namespace EolSequencer.Cli.Output;

/// <summary>
/// A file that is there whole or not at all: it is written beside its place, under a name that ends with <c>.part</c>, and moved there at
/// the end. Only an empty one is written in place when it is to be replaced: it may be a device or a pipe, which must stay what it is.
/// </summary>
internal sealed class NewFile : IDisposable
{
    private readonly string _path;
    private readonly bool _replace;

    private NewFile(string path, bool replace, FileStream content) => (_path, _replace, Content) = (path, replace, content);

    /// <summary>Where to write.</summary>
    public FileStream Content { get; }

    private bool IsInPlace => Content.Name == _path;

    /// <summary>Begins the file.</summary>
    /// <param name="refused">Why there can be none; null when there can.</param>
    public static NewFile? Open(string path, bool replace, out string? refused)
    {
        refused = null;
        try
        {
            var target = Path.GetFullPath(path);
            if (Directory.Exists(target)) refused = $"{path} is a folder; a file is wanted";
            else if (Path.Exists(target) && !replace) refused = AlreadyThere(path);
            else return new NewFile(target, replace, new FileStream(IsEmpty(target) ? target : target + ".part", FileMode.Create, FileAccess.Write, FileShare.None, 1 << 16));
        }
        catch (Exception fault) when (fault is IOException or UnauthorizedAccessException or ArgumentException or NotSupportedException)
        {
            refused = $"'{path.Replace("\0", "\\0", StringComparison.Ordinal)}' cannot be written: {fault.Message}";
        }

        return null;
    }

    /// <summary>Puts the file in its place. Why it could not; null when it is there.</summary>
    public string? Keep()
    {
        Content.Flush(flushToDisk: true);
        Content.Dispose();
        if (IsInPlace) return null;
        if (Path.Exists(_path) && !_replace) return AlreadyThere(_path);
        File.Move(Content.Name, _path, _replace);
        return null;
    }

    /// <summary>What was not kept is taken away.</summary>
    public void Dispose()
    {
        try
        {
            Content.Dispose();
        }
        finally
        {
            if (!IsInPlace) File.Delete(Content.Name);
        }
    }

    private static bool IsEmpty(string path) => new FileInfo(path) is { Exists: true, Length: 0 };

    private static string AlreadyThere(string path) => $"{path} is there already; name a new file, or add --replace";
}
