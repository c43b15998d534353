using EolSequencer.Rehearsal.Tests.WholeSystem.Storage;
using EolSequencer.Rehearsal.Tests.WholeSystem.Stories;
using Microsoft.Data.Sqlite;

namespace EolSequencer.Rehearsal.Tests.WholeSystem;

/// <summary>A seed that failed is worth something when it fails again: the same story, and the same record to the last byte.</summary>
public sealed class SameSeedTests
{
    [Fact]
    public void The_same_seed_tells_the_same_story_and_leaves_the_same_event_bytes()
    {
        var all = new HashSet<string>();
        for (ulong seed = 1; seed <= 20; seed++)
        {
            var (story, events) = Play(seed);
            var (again, eventsAgain) = Play(seed);
            Assert.Equal(story, again);
            Assert.Equal(events, eventsAgain);
            all.Add(story + string.Join('\n', events));
        }

        Assert.Equal(20, all.Count);
    }

    private static (string Story, List<string> Events) Play(ulong seed)
    {
        var events = new List<string>();
        var played = StoryPlayer.Play(StoryTeller.Of(seed), look: disk => events = EventsOn(disk));
        return (played.Story.ToString(), events);
    }

    private static List<string> EventsOn(SimulatedDisk disk)
    {
        using var connection = new SqliteConnection($"Data Source={Path.Combine(disk.Folder, "record.db")};Mode=ReadOnly;Pooling=False");
        connection.Open();
        using var command = connection.CreateCommand();
        command.CommandText = "SELECT hex(bytes) || ' ' || hex(hash) FROM event ORDER BY id";
        using var reader = command.ExecuteReader();
        var events = new List<string>();
        while (reader.Read()) events.Add(reader.GetString(0));
        return events;
    }
}
