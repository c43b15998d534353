using Serilog.Events;

namespace EolSequencer.Station.Log;

/// <summary>
/// What was refused to people who administer a record: one file a day in <c>log</c> of the data folder, UTC, without secrets. What
/// was done stands in the ledger.
/// </summary>
/// <remarks>No station has an id with a hyphen, so its files are none of a station. Any number of processes may write to it: each line has its turn. May be called from any thread.</remarks>
/// <param name="dataFolder">The data folder; <c>log</c> is made in it.</param>
public sealed class AdministrationLog(string dataFolder, TimeProvider time)
{
    private const string Name = "acts-refused";

    private const int MostTries = 50;

    private static readonly TimeSpan Pause = TimeSpan.FromMilliseconds(10);

    /// <summary>Why the newest line is not in the log, for people; null when it is.</summary>
    public string? Trouble { get; private set; }

    /// <summary>Writes a line.</summary>
    public void Note(string text)
    {
        for (var tries = 1; !TryNote(text) && tries < MostTries; tries++) Thread.Sleep(Pause);
    }

    private bool TryNote(string text)
    {
        var folder = Path.Combine(dataFolder, "log");
        try
        {
            Directory.CreateDirectory(folder);
            using var turn = new FileStream(Path.Combine(folder, Name + ".lock"), FileMode.OpenOrCreate, FileAccess.ReadWrite, FileShare.None);
            using var file = new DayFile(folder, Name, time);
            file.Write(LogEventLevel.Warning, "{Text}", text);
            Trouble = file.Trouble;
        }
        catch (Exception fault) when (fault is IOException or UnauthorizedAccessException)
        {
            Trouble = fault.Message;
        }

        return Trouble is null;
    }
}
