using EolSequencer.Engine.Judging;

namespace EolSequencer.Rehearsal.Replay;

/// <summary>How an attempt would have ended, or why the record does not tell.</summary>
internal readonly record struct Replayable(RecordedEnd? End, string? Why)
{
    public static Replayable Undecidable(string why) => new(null, why);

    public static implicit operator Replayable(RecordedEnd end) => new(end, null);
}
