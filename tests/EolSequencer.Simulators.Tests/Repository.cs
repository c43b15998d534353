namespace EolSequencer.Simulators.Tests;

/// <summary>Files of the working tree.</summary>
internal static class Repository
{
    public static string PathOf(params string[] parts)
    {
        var folder = new DirectoryInfo(AppContext.BaseDirectory);
        while (folder is not null && !File.Exists(Path.Combine(folder.FullName, "EolSequencer.sln"))) folder = folder.Parent;
        Assert.NotNull(folder);
        return Path.Combine([folder.FullName, .. parts]);
    }
}
