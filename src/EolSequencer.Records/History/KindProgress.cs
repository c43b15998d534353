using System.Collections.Immutable;
using EolSequencer.Records.Reading;

namespace EolSequencer.Records.History;

/// <summary>A vehicle at a station kind, as far as it speaks for or against its release.</summary>
/// <param name="Run">Id of the newest whole run.</param>
/// <param name="Unfinished">Runs that began and did not end.</param>
/// <param name="Open">Steps that speak against the vehicle.</param>
/// <param name="HasJudged">Whether anything was judged at all.</param>
internal sealed record KindProgress(string StationKind, string Run, ImmutableArray<string> Unfinished, ImmutableArray<StepState> Open, bool HasJudged)
{
    public static KindProgress Of(StationKindState state) => new(state.StationKind, state.Run.Run, state.Unfinished, [.. state.Open], state.HasJudged);

    /// <summary>The same without looking at its steps, where the numbers of a whole run say that there is nothing to see; null where they do not.</summary>
    /// <param name="hasRetests">Whether retests name the run: then their steps count.</param>
    public static KindProgress? OfPassed(RunSummary run, bool hasRetests) =>
        run.HasPassed && !hasRetests && run.End is { Numbers: { Inconclusive: 0, Fail: 0, Error: 0, Pass: > 0 } } ? new KindProgress(run.StationKind, run.Run, [], [], true) : null;
}
