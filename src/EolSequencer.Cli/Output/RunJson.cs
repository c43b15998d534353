using EolSequencer.Model.Events;
using EolSequencer.Model.Judging;

namespace EolSequencer.Cli.Output;

/// <summary>A run for programs: the roll-up and every step with its criteria.</summary>
internal static class RunJson
{
    /// <param name="recordFault">Why the record could not be kept to the end; null when it was.</param>
    public static object Of(RunFold run, string? recordFault) => new
    {
        run = run.Begun?.Run,
        vin = run.Begun?.Order.Vin.Text,
        sequence = run.Begun?.Sequence,
        revision = run.Begun?.Revision,
        mode = run.Begun?.Mode.Word(),
        seed = run.Begun?.Seed,
        injected = run.Begun?.Injected,
        verdict = run.Ended?.RollUp.Verdict.Word(),
        interrupted = run.Ended?.Interrupted,
        numbers = run.Ended is { RollUp: var numbers }
            ? new { none = numbers.None, pass = numbers.Pass, inconclusive = numbers.Inconclusive, fail = numbers.Fail, error = numbers.Error }
            : null,
        seconds = run.At.TotalSeconds,
        recordFault,
        conditions = Conditions(run.Conditions),
        steps = Steps(run),
        traces = Traces(run),
        notNeeded = run.NotNeeded,
        notReached = run.Ended?.NotReached,
        notApplicable = run.Begun?.NotApplicable,
    };

    /// <summary>Conditions by name.</summary>
    public static IReadOnlyDictionary<string, object> Conditions(IEnumerable<Condition> conditions) => conditions.ToDictionary(
        one => one.Name, one => (object)new { value = one.Value, unit = one.Unit, missing = one.Missing?.Word(), instrument = one.Instrument });

    /// <summary>The last attempt of each step.</summary>
    public static IEnumerable<object> Steps(RunFold run) => run.Results.Select(Step);

    /// <summary>The traces of the run, without their readings.</summary>
    public static IEnumerable<object> Traces(RunFold run) => run.Traces.Select(trace => new
    {
        group = trace.Step,
        channel = trace.Channel,
        readings = trace.Points.Count(point => point.Value is not null),
        fromSeconds = trace.Capture!.From / 1e6,
        seconds = trace.Capture.Length / 1e6,
        lost = trace.Capture.Lost,
    });

    private static object Step(Judged judged) => new
    {
        step = judged.Step,
        attempt = judged.Attempt,
        measured = judged.Measured.Word(),
        counted = judged.Counted.Word(),
        startSeconds = judged.Start / 1e6,
        tookSeconds = judged.Took / 1e6,
        cause = judged.Cause?.Word(),
        detail = judged.Detail,
        requirements = judged.Requirements.IsEmpty ? null : judged.Requirements.ToArray(),
        part = judged.Part,
        repair = judged.Repair?.Versions.ToDictionary(version => version.Language, version => version.Text),
        criteria = judged.Criteria.Select(one => new
        {
            of = one.Of.Length == 0 ? null : one.Of,
            value = one.Value,
            unit = one.Unit,
            expected = one.Expected,
            uncertainty = one.Uncertainty,
            decision = one.Uncertainty is null ? null : one.IsGuarded ? "guarded" : "simple",
            risk = Risk(one),
            verdict = one.Verdict.Word(),
            recordOnly = one.RecordOnly ? true : (bool?)null,
        }),
    };

    private static object? Risk(CriterionResult one) => DecisionRisk.For(one) is { } risk
        ? new
        {
            conforming = risk.Conforming,
            falseAcceptance = one.Verdict == Verdict.Pass ? risk.OfAccepting : (double?)null,
            falseRejection = one.Verdict == Verdict.Fail ? risk.OfRejecting : (double?)null,
        }
        : null;
}
