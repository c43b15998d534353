namespace EolSequencer.Cli.Tests.Kit;

/// <summary>Finds the repository above the tests.</summary>
internal static class Repository
{
    public static string Root { get; } = Find(new DirectoryInfo(AppContext.BaseDirectory));

    private static string Find(DirectoryInfo? folder) => folder switch
    {
        null => throw new InvalidOperationException("the tests run inside the repository"),
        _ when File.Exists(Path.Combine(folder.FullName, "EolSequencer.sln")) => folder.FullName,
        _ => Find(folder.Parent),
    };
}
