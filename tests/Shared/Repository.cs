namespace EolSequencer.Tests.Shared;

/// <summary>The working tree that the tests were built from; compiled into every project here.</summary>
internal static class Repository
{
    /// <summary>Full path of the folder with the solution.</summary>
    public static string Root { get; } = Find(new DirectoryInfo(AppContext.BaseDirectory));

    /// <summary>Full path of a file or folder in it.</summary>
    public static string PathOf(params string[] parts) => Path.Combine([Root, .. parts]);

    private static string Find(DirectoryInfo? folder) => folder switch
    {
        null => throw new InvalidOperationException("tests and benchmarks run inside the repository"),
        _ when File.Exists(Path.Combine(folder.FullName, "EolSequencer.sln")) => folder.FullName,
        _ => Find(folder.Parent),
    };
}
