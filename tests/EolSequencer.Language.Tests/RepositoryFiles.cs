namespace EolSequencer.Language.Tests;

/// <summary>The sequences that come with the project, as they stand beside the sources.</summary>
internal static class RepositoryFiles
{
    public static IEnumerable<string> Named(string pattern) =>
        Directory.EnumerateFiles(Repository.PathOf("sequences"), pattern, SearchOption.AllDirectories).Order(StringComparer.Ordinal);
}
