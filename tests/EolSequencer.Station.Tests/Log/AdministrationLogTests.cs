using EolSequencer.Station.Log;

namespace EolSequencer.Station.Tests.Log;

/// <summary>A refused attempt must be seen by whoever looks after the station, also when several people try at once.</summary>
public sealed class AdministrationLogTests : IDisposable
{
    private readonly DirectoryInfo _folder = Directory.CreateTempSubdirectory("eol-log-");

    [Fact]
    public void Lines_of_many_at_once_are_all_kept_each_on_its_line()
    {
        Parallel.For(0, 40, new ParallelOptions { MaxDegreeOfParallelism = 4 }, k => new AdministrationLog(_folder.FullName, TimeProvider.System).Note($"refused {k:00}\nand more"));

        var lines = Directory.GetFiles(Path.Combine(_folder.FullName, "log"), "acts-refused-*.log").SelectMany(File.ReadAllLines).ToList();
        Assert.Equal(Enumerable.Range(0, 40).Select(k => $"refused {k:00} and more"), lines.Select(line => line[^19..]).Order());
    }

    [Fact]
    public void A_log_that_cannot_be_written_says_so()
    {
        File.WriteAllText(Path.Combine(_folder.FullName, "log"), "a file where the folder should be");
        var log = new AdministrationLog(_folder.FullName, TimeProvider.System);

        log.Note("refused");

        Assert.NotNull(log.Trouble);
    }

    public void Dispose() => _folder.Delete(recursive: true);
}
