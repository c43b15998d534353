using System.Collections.Immutable;
using EolSequencer.Model.Events;
using EolSequencer.Model.Judging;
using EolSequencer.Records.Canonical;
using EolSequencer.Records.Reading;

namespace EolSequencer.Records.Exporting;

/// <summary>What is exported of runs, step results and criteria, in this order.</summary>
internal static class ExportColumns
{
    public static ImmutableArray<ExportColumn<RunSummary>> Identity { get; } =
    [
        new("run", run => ExportValue.Of(run.Run)),
        new("mode", run => ExportValue.Of(run.Mode.Word())),
        new("begun", run => ExportValue.Of(UtcText.Of(run.Begun))),
        new("plant", run => ExportValue.Of(run.Plant)),
        new("station", run => ExportValue.Of(run.Station)),
        new("stationKind", run => ExportValue.Of(run.StationKind)),
        new("vin", run => ExportValue.Of(run.Vin)),
        new("order", run => ExportValue.Of(run.Order)),
        new("vehicleType", run => ExportValue.Of(run.VehicleType)),
        new("sequence", run => ExportValue.Of(run.Sequence)),
        new("revision", run => ExportValue.Of(run.Revision)),
        new("inPart", run => ExportValue.Of(run.IsPartial)),
        new("retestOf", run => ExportValue.Of(run.RetestOf)),
        new("conditions", run => Several(run.Conditions.Select(one => $"{one.Name}={one.Words}"))),
    ];

    public static ImmutableArray<ExportColumn<RunSummary>> Runs { get; } =
    [
        .. Identity,
        new("person", run => ExportValue.Of(run.Person)),
        new("planned", run => ExportValue.Of(run.Planned)),
        new("ended", run => ExportValue.Of(run.End is { } end ? UtcText.Of(end.At) : null)),
        new("seconds", run => ExportValue.Seconds(run.End is { } end ? (long)end.Took.TotalMicroseconds : null)),
        new("interrupted", run => ExportValue.Of(run.End?.IsInterrupted)),
        new("verdict", run => ExportValue.Of(run.End?.Numbers.Verdict.Word())),
        new("none", run => ExportValue.Of(run.End?.Numbers.None)),
        new("pass", run => ExportValue.Of(run.End?.Numbers.Pass)),
        new("inconclusive", run => ExportValue.Of(run.End?.Numbers.Inconclusive)),
        new("fail", run => ExportValue.Of(run.End?.Numbers.Fail)),
        new("error", run => ExportValue.Of(run.End?.Numbers.Error)),
    ];

    public static ImmutableArray<ExportColumn<StepResult>> Steps { get; } =
    [
        .. Identity.Select(column => new ExportColumn<StepResult>(column.Name, step => column.Of(step.Run))),
        new("event", step => ExportValue.Of(step.Judged.N)),
        new("step", step => ExportValue.Of(step.Judged.Step)),
        new("attempt", step => ExportValue.Of(step.Judged.Attempt)),
        new("last", step => ExportValue.Of(step.IsLast)),
        new("measured", step => ExportValue.Of(step.Judged.Measured.Word())),
        new("counted", step => ExportValue.Of(step.Judged.Counted.Word())),
        new("startSeconds", step => ExportValue.Seconds(step.Judged.Start)),
        new("tookSeconds", step => ExportValue.Seconds(step.Judged.Took)),
        new("cause", step => ExportValue.Of(step.Judged.Cause?.Word())),
        new("detail", step => ExportValue.Of(step.Judged.Detail)),
        new("requirements", step => Several(step.Judged.Requirements)),
        new("nonconformity", step => ExportValue.Of(step.Judged.Nonconformity)),
        new("part", step => ExportValue.Of(step.Judged.Part)),
        new("instrument", step => Several(step.Judged.Readings.Select(reading => reading.Instrument).OfType<string>().Distinct())),
    ];

    public static ImmutableArray<ExportColumn<CriterionResult>> Criteria { get; } =
    [
        new("of", one => ExportValue.Of(one.Of.Length == 0 ? null : one.Of)),
        new("value", one => one.IsText ? ExportValue.Of(one.Value) : ExportValue.Measured(one.Value)),
        new("unit", one => ExportValue.Of(one.Unit)),
        new("expected", one => ExportValue.Of(one.Expected)),
        new("low", one => ExportValue.Measured(one.Low)),
        new("high", one => ExportValue.Measured(one.High)),
        new("uncertainty", one => ExportValue.Measured(one.Uncertainty)),
        new("verdict", one => ExportValue.Of(one.Verdict.Word())),
        new("recordOnly", one => ExportValue.Of(one.RecordOnly ? true : (bool?)null)),
    ];

    private static ExportValue Several(IEnumerable<string> texts) => ExportValue.Of(string.Join("; ", texts) is { Length: > 0 } all ? all : null);
}
