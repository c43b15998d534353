namespace EolSequencer.Rehearsal.Tests.Campaigns;

/// <summary>A folder of one test, gone when it ends.</summary>
internal sealed class OwnFolder : IDisposable
{
    private readonly DirectoryInfo _folder = Directory.CreateTempSubdirectory("eol-campaign-");

    public string PathOf(string name) => Path.Combine(_folder.FullName, name);

    public void Dispose() => _folder.Delete(recursive: true);
}
