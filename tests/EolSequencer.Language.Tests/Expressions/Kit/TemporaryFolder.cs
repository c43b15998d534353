namespace EolSequencer.Language.Tests.Expressions.Kit;

/// <summary>A folder that goes with the test.</summary>
internal sealed class TemporaryFolder : IDisposable
{
    public string Path { get; } = Directory.CreateTempSubdirectory("expressions-").FullName;

    public IEnumerable<string> Names => Directory.EnumerateFiles(Path).Select(file => System.IO.Path.GetFileName(file)!);

    public string Only(string extension) => Assert.Single(Directory.GetFiles(Path, "*" + extension));

    public void Dispose() => Directory.Delete(Path, recursive: true);
}
