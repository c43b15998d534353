using EolSequencer.Model.Events;
using EolSequencer.Model.Judging;
using EolSequencer.Records.Canonical;

namespace EolSequencer.Records.Writing;

/// <summary>What the table <c>run</c> holds of a run from its last event.</summary>
/// <param name="EndedUtc">Wall time of the beginning and the run's own monotonic time, whatever the wall clock did meanwhile.</param>
internal sealed record RunEndRow(string EndedUtc, long TookMicroseconds, string Verdict, bool IsInterrupted, RollUp Numbers)
{
    public static RunEndRow Of(string begunUtc, RunEnded ended) => new(
        UtcText.Of(UtcText.Read(begunUtc).AddTicks(ended.At * TimeSpan.TicksPerMicrosecond)),
        ended.At,
        ended.RollUp.Verdict.Word(),
        ended.Interrupted,
        ended.RollUp);
}
