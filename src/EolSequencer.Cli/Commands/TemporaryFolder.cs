namespace EolSequencer.Cli.Commands;

/// <summary>A folder that is there for one command only.</summary>
internal sealed class TemporaryFolder : IDisposable
{
    private readonly DirectoryInfo _folder = Directory.CreateTempSubdirectory("eol-");

    public string Path => _folder.FullName;

    public void Dispose()
    {
        try
        {
            _folder.Delete(recursive: true);
        }
        catch (Exception fault) when (fault is IOException or UnauthorizedAccessException)
        {
            // Left to the system's own cleaning: what came of the command does not change by it.
        }
    }
}
