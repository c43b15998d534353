namespace EolSequencer.Language.Tests;

/// <summary>The sequences that come with the project, as they stand beside the sources.</summary>
internal static class RepositoryFiles
{
    public static IEnumerable<string> Named(string pattern) =>
        Directory.EnumerateFiles(Path.Combine(Root(), "sequences"), pattern, SearchOption.AllDirectories).Order(StringComparer.Ordinal);

    private static string Root()
    {
        var folder = AppContext.BaseDirectory;
        while (!File.Exists(Path.Combine(folder, "EolSequencer.sln")))
            folder = Path.GetDirectoryName(folder) ?? throw new InvalidOperationException("the tests do not lie below EolSequencer.sln");
        return folder;
    }
}
