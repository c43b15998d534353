using EolSequencer.Model.Judging;
using EolSequencer.Records.Tests.Samples;

namespace EolSequencer.Records.Tests.Verify;

/// <summary>A record of three ended runs, of which each test takes its own copy; the second has failed.</summary>
public sealed class RecordOfThreeRuns : IDisposable
{
    public RecordOfThreeRuns()
    {
        using var station = Folder.Take();
        TempFolder.WriteRun(station);
        TempFolder.WriteRun(station, counted: Verdict.Fail);
        TempFolder.WriteRun(station);
    }

    internal TempFolder Folder { get; } = new();

    internal TempFolder Copy()
    {
        var copy = new TempFolder();
        foreach (var file in (string[])[Folder.Database, Folder.KeyFile]) File.Copy(file, Path.Combine(copy.Path, Path.GetFileName(file)));
        return copy;
    }

    public void Dispose() => Folder.Dispose();
}
