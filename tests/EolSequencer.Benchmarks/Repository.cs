namespace EolSequencer.Benchmarks;

/// <summary>Finds the repository above the program.</summary>
internal static class Repository
{
    public static string Root { get; } = Find(new DirectoryInfo(AppContext.BaseDirectory));

    private static string Find(DirectoryInfo? folder) => folder switch
    {
        null => throw new InvalidOperationException("run the benchmarks inside the repository"),
        _ when File.Exists(Path.Combine(folder.FullName, "EolSequencer.sln")) => folder.FullName,
        _ => Find(folder.Parent),
    };
}
