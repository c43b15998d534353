using EolSequencer.Model.Events;
using EolSequencer.Model.Judging;

namespace EolSequencer.Rehearsal.Tests.WholeSystem.Stories;

/// <summary>How much has been told in many stories: a simulation that lets nothing happen proves nothing.</summary>
internal sealed class StoryCounts
{
    private readonly Dictionary<string, int> _counts = [];

    /// <summary>What has to have happened in many stories.</summary>
    public static IReadOnlyList<string> Wanted { get; } =
    [
        "crashes", "without a whole record", "broke off", "nothing kept", "one more kept than reported", "interrupted", "pass", "fail", "inconclusive", "error",
        "devices lost", "devices back", "stopped", "further attempts",
        "left safe", "gone on with", "ended as it was",
    ];

    /// <summary>How often something happened, by its name.</summary>
    public IReadOnlyDictionary<string, int> Counts => _counts;

    public void Add(PlayedStory story)
    {
        Count("starts of the program", story.Openings.Length);
        foreach (var vehicle in story.Vehicles)
        {
            Count("vehicles");
            if (vehicle.Crashed) Count("crashes");
            if (vehicle.Result.Fault is not null) Count("without a whole record");
            if (vehicle.Recorded is [.., not RunEnded]) Count("broke off");
            if (vehicle.Recorded is null) Count("nothing kept");
            if (vehicle.Recorded?.Length > vehicle.Reported) Count("one more kept than reported");
            if (vehicle.Result.Interrupted) Count("interrupted");
            foreach (var part in vehicle.TakenUp) Count(part.For switch { ResumedFor.Safety => "left safe", ResumedFor.Steps => "gone on with", _ => "ended as it was" });
            Count(vehicle.Result.RollUp.Verdict.Word());
            Count("events", vehicle.Told.Length);
            foreach (var (next, _) in vehicle.Told)
            {
                if (next is DeviceLost) Count("devices lost");
                if (next is DeviceBack) Count("devices back");
                if (next is Stopped) Count("stopped");
                if (next is Judged { Attempt: > 1 }) Count("further attempts");
            }
        }
    }

    public override string ToString() => string.Join(", ", _counts.OrderBy(entry => entry.Key, StringComparer.Ordinal).Select(entry => $"{entry.Value} {entry.Key}"));

    private void Count(string what, int by = 1) => _counts[what] = _counts.GetValueOrDefault(what) + by;
}
