using System.Globalization;
using System.Xml.Linq;
using EolSequencer.Cli.Output;
using EolSequencer.Model.Judging;
using EolSequencer.Rehearsal.Campaigns;
using static EolSequencer.Cli.Explaining.Tags;

namespace EolSequencer.Cli.Rehearsing;

/// <summary>What a campaign has shown as one page: the numbers, what is wrong, and the matrix of faults and steps as a picture.</summary>
internal static class CampaignPage
{
    private const string Style = """
        body { font: 16px/1.4 system-ui, sans-serif; margin: 1.5rem; color: #111; background: #fff }
        h1 { font-size: 1.6rem; margin: 0 0 .3rem } h2 { font-size: 1.2rem; margin: 1.6rem 0 .4rem }
        .result { font-size: 1.4rem; font-weight: 700; border: 3px solid; display: inline-block; padding: .2rem .8rem; margin: .5rem 0 }
        table { border-collapse: collapse } th, td { border: 1px solid #999; padding: .2rem .5rem; text-align: left; vertical-align: top }
        th { background: #eee } td.n { text-align: right; font-variant-numeric: tabular-nums } code { font-size: .85em; overflow-wrap: anywhere }
        .picture { overflow: auto; max-height: 90vh; border: 1px solid #999 } svg text { font: 9px system-ui, sans-serif; fill: #111 }
        """;

    public static string Of(CampaignFindings findings, RunsAgain again)
    {
        var head = findings.Head;
        var title = $"Rehearsal of {head.Sequence} revision {head.Revision.ToString(CultureInfo.InvariantCulture)}";
        var page = Tag(
            "html",
            new XAttribute("lang", "en"),
            new XAttribute(XNamespace.Xml + "lang", "en"),
            Tag("head",
                Void("meta", ("charset", "utf-8")),
                Void("meta", ("name", "viewport"), ("content", "width=device-width, initial-scale=1")),
                Void("meta", ("http-equiv", "Content-Security-Policy"), ("content", "default-src 'none'; style-src 'unsafe-inline'")),
                Tag("title", title),
                Tag("style", Style)),
            Tag("body",
                Tag("h1", title),
                Tag("div", Class("result"), Words.Of(findings.IsGood ? Verdict.Pass : Verdict.Fail)),
                Numbers(findings),
                Lists(findings, again),
                Tag("h2", "Which step caught which fault"),
                Tag("p", "A row for each fault, a column for each step in written order. ",
                    "✗ the step failed, ! error of the test equipment, ? inconclusive; in a box where it was the first to tell. A fault without a sign in its row was not seen; a column without one belongs to a step that nothing makes fail."),
                Tag("div", Class("picture"), MatrixPicture.Of(findings))));
        return $"<!DOCTYPE html>\n{page.ToString(SaveOptions.DisableFormatting)}\n";
    }

    private static XElement Numbers(CampaignFindings findings)
    {
        var (head, judged) = (findings.Head, findings.Steps.Where(step => step.IsJudged).ToList());
        var cycle = head.CycleMicroseconds is { } micros ? $"{Number(micros / 1e6)} s" : "none said";
        return Tag("table", Tag("tbody",
            Row("Plant, station", $"{head.Plant}, {head.Station}"),
            Row("Runs", $"{findings.Done} of {head.Jobs} ({head.Settings})"),
            Row("Good vehicles that passed", findings.Times is { } runs ? $"{runs.Runs - findings.FalseAlarms.Length} of {runs.Runs}" : "none run"),
            Row("Time of good vehicles", findings.Times is { } times ? $"p50 {Seconds(times.Median)}, p95 {Seconds(times.P95)}, longest {Seconds(times.Longest)}; cycle time {cycle}" : "none run"),
            new[] { "safety", "function", "other" }.Select(name => findings.Faults.Where(fault => fault.Class == name && fault.Runs > 0).ToList()).Where(faults => faults.Count > 0)
                .Select(faults => (object?)Row($"Faults of class {faults[0].Class} caught in all their runs", $"{faults.Count(fault => fault.Escapes.IsEmpty)} of {faults.Count}")),
            Row("Judged steps that some fault makes fail", $"{judged.Count(step => step.Faults > 0)} of {judged.Count}, {judged.Count(step => step.VehicleFaults > 0)} of them by a fault of the vehicle"),
            findings.PairRuns > 0 ? Row("Two faults at a time", $"{findings.PairRuns} runs, {findings.Masked.Length} hide each other") : null));
    }

    private static IEnumerable<object?> Lists(CampaignFindings findings, RunsAgain again) =>
    [
        List("Could not run", ["Why"], findings.Troubles.Select(trouble => new object[] { trouble })),
        List("Good vehicles that did not pass", ["Vehicle", "Steps", "Again"], findings.FalseAlarms.Select(alarm => new object[]
        {
            alarm.Run.Options, string.Join(", ", alarm.Steps.Select(step => $"{Words.Sign(step.Counted)} {step.Step}")), Tag("code", again.CommandFor(alarm.Run)),
        })),
        List("Faults that escape", ["Fault", "Class", "What is wrong", "Caught", "Again"], CampaignTables.Together(findings.Escapes.OrderBy(fault => fault.Class == "safety" ? 0 : 1)).Select(faults => new object[]
        {
            CampaignTables.NameOf(faults), faults[0].Class, faults[0].Effect, $"{faults.Sum(fault => fault.Caught)} of {faults.Sum(fault => fault.Runs)}", Tag("code", again.CommandFor(faults[0].Escapes[0])),
        })),
        List("Judged steps that no fault makes fail", ["Step", "Class"], findings.NeverFailing.Select(step => new object[] { step.Id, step.Class })),
        List("Judged steps of class safety that no fault of the vehicle reaches", ["Step"], findings.SafetyUnreached.Select(step => new object[] { step.Id })),
        List("Two faults that hide each other", ["Faults", "Again"], findings.Masked.Select(pair => new object[] { $"{pair.First}, {pair.Second}", Tag("code", again.CommandFor(pair.Run)) })),
        List("Steps whose verdict on good vehicles depends on the seed", ["Step", "Vehicle", "Not passed"], findings.Flaky.Select(step => new object[] { step.Step, step.Options, $"{step.Worse} of {step.Runs}" })),
        List("Nearest to their windows", ["Step", "Vehicle", "Mean", "Standard deviation", "Window", "Distance in standard deviations", "Outside"],
            findings.Narrowest.Take(30).Select(margin => new object[]
            {
                margin.Step, margin.Options, Number(margin.Mean), Number(margin.Deviation), $"{margin.Low?.ToString(CultureInfo.InvariantCulture)} .. {margin.High?.ToString(CultureInfo.InvariantCulture)}",
                Number(margin.Distance!.Value), $"{margin.Outside} of {margin.Runs}",
            })),
    ];

    private static IEnumerable<object?> List(string title, string[] columns, IEnumerable<object[]> rows)
    {
        var all = rows.ToList();
        if (all.Count == 0) yield break;
        yield return Tag("h2", $"{title}: {all.Count.ToString(CultureInfo.InvariantCulture)}");
        yield return Tag("table",
            Tag("thead", Tag("tr", columns.Select(column => (object?)Tag("th", ("scope", "col"), column)))),
            Tag("tbody", all.Select(row => (object?)Tag("tr", row.Select(cell => (object?)Tag("td", cell))))));
    }

    private static XElement Row(string name, string value) => Tag("tr", Tag("th", ("scope", "row"), name), Tag("td", value));

    private static string Seconds(double seconds) => Words.Seconds(TimeSpan.FromSeconds(seconds));

    private static string Number(double number) => number.ToString("0.####", CultureInfo.InvariantCulture);
}
