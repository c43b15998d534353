namespace EolSequencer.Rehearsal.Tests.WholeSystem.Storage;

/// <summary>A folder for many short-lived files, in memory where the system offers that; gone when disposed of.</summary>
internal sealed class QuickFolder : IDisposable
{
    private const string InMemory = "/dev/shm";
    private const long Wanted = 256L << 20;

    private static readonly string Root = Directory.Exists(InMemory) && new DriveInfo(InMemory).AvailableFreeSpace > Wanted ? InMemory : System.IO.Path.GetTempPath();

    public string Path { get; } = Directory.CreateDirectory(System.IO.Path.Combine(Root, $"eol-system-{Guid.NewGuid():N}")).FullName;

    public void Dispose() => Directory.Delete(Path, recursive: true);
}
