using System.Collections.Concurrent;
using System.Text.RegularExpressions;
using EolSequencer.Cli.Explaining;
using EolSequencer.Engine.Planning;
using EolSequencer.Language.Expressions;
using EolSequencer.Language.Loading;
using EolSequencer.Station.Explaining;

namespace EolSequencer.Cli.Tests.Explaining;

/// <summary>Whoever works by the page does what the station would have done: the same steps, each once, in as much time.</summary>
public sealed partial class DemoExplanationTests
{
    private static readonly string Startup = Repository.PathOf("sequences", "demo", "startup", "startup.yaml");
    private static readonly SequencePlan All = SequenceLoader.Plan(Startup, ExpressionCache.None).Plan!;

    private static readonly ConcurrentDictionary<string, Subject> Subjects = new();

    public static TheoryData<string> Orders =>
        new(Directory.GetFiles(Repository.PathOf("sequences", "demo", "orders"), "FV-*.yaml").Select(file => Path.GetFileName(file)).Order(StringComparer.Ordinal));

    [Theory]
    [MemberData(nameof(Orders))]
    public void Every_planned_step_appears_exactly_once(string order)
    {
        var subject = Subject(order);
        var plan = Planner.For(subject.Sequence, subject.Order);
        var planned = Plan.StepsOf(plan.Prepare, plan.Steps, plan.Always, plan.AfterVerdict).Select(step => step.Id).Order(StringComparer.Ordinal).ToList();
        var explanation = Explainer.Of(subject, "es");

        var lines = ExplanationLines.Of(explanation).Select(line => StepLine().Match(line.Text)).Where(match => match.Success).ToList();
        var page = PageReader.Read(ExplanationPage.Of(explanation));

        Assert.Equal(planned, lines.Select(match => match.Groups[2].Value).Order(StringComparer.Ordinal));
        Assert.Equal(planned, page.QuerySelectorAll("tr.step li.id").Select(id => id.TextContent).Order(StringComparer.Ordinal));
        Assert.Equal(Enumerable.Range(1, planned.Count), lines.Select(match => int.Parse(match.Groups[1].Value, System.Globalization.CultureInfo.InvariantCulture)));
        Assert.Equal(plan.NotApplicable.Concat(plan.NotFitted.Select(one => one.Id)), explanation.NotPlanned.Select(fact => fact.Label));
        Assert.Empty(planned.Intersect(explanation.NotPlanned.Select(fact => fact.Label)));
    }

    /// <summary>The plan for all combinations is made by other code, over all vehicles at once and without an order.</summary>
    [Theory]
    [MemberData(nameof(Orders))]
    public void Steps_and_planned_time_are_those_of_the_plan_for_all_combinations(string order)
    {
        var subject = Subject(order);
        var row = Assert.Single(All.Vehicles, vehicle => All.Options.Zip(vehicle.Values).All(pair => subject.Order.Options[pair.First].ToString() == pair.Second));

        var explanation = Explainer.Of(subject, "es");

        Assert.Equal((row.Steps, row.Judged, row.Time), (explanation.Steps.Count(), explanation.Steps.Count(step => step.IsJudged), explanation.Planned));
    }

    private static Subject Subject(string order) => Subjects.GetOrAdd(order, Load);

    private static Subject Load(string order)
    {
        var (subject, diagnostics) = SubjectFinder.Find(Startup, null, Repository.PathOf("sequences", "demo", "orders", order), null, ExpressionCache.None);
        Assert.True(subject is not null, string.Join('\n', diagnostics));
        return subject;
    }

    [GeneratedRegex(@"^ *(\d+)\. ([a-z_0-9.,\[\]]+)(?: .*)?, [0-9.]+ s(?:, at: .*)?$")]
    private static partial Regex StepLine();
}
