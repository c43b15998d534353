using System.Collections.Immutable;
using EolSequencer.Engine.Planning;
using EolSequencer.Model.Planning;
using EolSequencer.Model.Plants;
using EolSequencer.Model.Sequences;
using EolSequencer.Model.Texts;
using EolSequencer.Model.Vehicles;

namespace EolSequencer.Station.Explaining;

/// <summary>Puts the plan of one vehicle into words.</summary>
public sealed class Explainer
{
    private readonly Subject _subject;
    private readonly string _language;
    private readonly StepFacts _facts;
    private readonly PlannedTimeline _times;
    private int _number;

    private Explainer(Subject subject, DeviceWords devices, string language)
    {
        (_subject, _language) = (subject, language);
        _facts = new StepFacts(subject.Order, devices, language);
        _times = new PlannedTimeline(subject);
    }

    /// <summary>The sequence for this vehicle in words.</summary>
    /// <param name="language">ISO 639-1 code; what an author has not written in it comes in the first language there is.</param>
    public static Explanation Of(Subject subject, string language)
    {
        var (plant, sequence, order, station) = subject;
        var plan = Planner.For(sequence, order);
        var devices = new DeviceWords(sequence, station);
        var explainer = new Explainer(subject, devices, language);
        return new Explanation
        {
            Title = Wording.Of(sequence.Title, language),
            Sequence = sequence.Id,
            Revision = sequence.Revision,
            VehicleType = Wording.Of(sequence.VehicleType.Title, language),
            Order = order,
            Plant = Wording.Of(plant.Title, language),
            Station = station,
            StationKind = sequence.StationKind,
            CycleTime = sequence.CycleTime,
            Planned = explainer._times.Of([.. plan.Prepare, .. plan.Steps, .. plan.Always, .. plan.AfterVerdict]),
            Devices = devices.All,
            Parameters = [.. sequence.Parameters.Select(parameter => new ExplainedFact(parameter.Name, parameter.Default.ToString()!))],
            Parts = explainer.Parts(plan),
            NotPlanned =
            [
                .. plan.LeftOut.Select(one => new ExplainedFact(one.Id, $"only for {ConditionWords.Of(one.When, order, one.Arguments)}")),
                .. plan.NotFitted.Select(one => new ExplainedFact(one.Id, $"not fitted: only for {ConditionWords.Of(one.When, order, one.Arguments)}")),
            ],
        };
    }

    private ImmutableArray<ExplainedPart> Parts(Plan plan)
    {
        ExplainedPart[] parts =
        [
            Part("Before", "before the first step, and again after every interruption", plan.Prepare),
            Part("Steps", "in this order", plan.Steps),
            Part("Always", "whatever happened", plan.Always),
            Part("After the verdict", "sees the verdict and cannot change it", plan.AfterVerdict),
        ];
        return [.. parts.Where(part => !part.Items.IsEmpty)];
    }

    private ExplainedPart Part(string title, string when, ImmutableArray<PlannedNode> nodes) => new(title, when, _times.Of(nodes), Items(nodes));

    private ImmutableArray<ExplainedItem> Items(ImmutableArray<PlannedNode> nodes) => [.. nodes.Select(Item)];

    private ExplainedItem Item(PlannedNode node) => node switch
    {
        PlannedStep step => OfStep(step),
        PlannedGroup group => Block(BlockKind.Group, group, group.Group, [.. Items(group.Children), .. Items(group.Always)]),
        PlannedLanes { Node: Group group } lanes => Block(BlockKind.AnyOrder, lanes, group, [.. lanes.Lanes.SelectMany(lane => Items(lane)), .. Items(lanes.Always)]),
        PlannedLanes lanes => Block(BlockKind.SideBySide, lanes, lanes.Node, [.. lanes.Lanes.Zip(lanes.Names, Branch)]),
        _ => throw new InvalidOperationException("nothing else is planned"),
    };

    private ExplainedBlock Branch(ImmutableArray<PlannedNode> lane, string name) => new()
    {
        Kind = BlockKind.Branch,
        Id = "",
        Title = Wording.Ours(name.Replace('_', ' ')),
        Planned = _times.Of(lane),
        Facts = [],
        Items = Items(lane),
    };

    private ExplainedBlock Block(BlockKind kind, PlannedNode planned, Node node, ImmutableArray<ExplainedItem> items) => new()
    {
        Kind = kind,
        Id = planned.Id,
        Title = Own(node.Title, planned),
        Place = Place(planned),
        Caution = Own(node.Caution, planned),
        Planned = _times.Of(planned),
        Facts = [.. _facts.Of(node, planned.Arguments), .. StepFacts.Captured(planned)],
        Items = items,
    };

    private ExplainedStep OfStep(PlannedStep planned)
    {
        var step = planned.Step;
        var values = new ExpectationWords(_subject.Order, planned.Arguments);
        return new ExplainedStep
        {
            Number = ++_number,
            Id = planned.Id,
            Title = Own(step.Title, planned),
            Place = Place(planned),
            Caution = Own(step.Caution, planned),
            Prompt = Own(ActionWords.Prompt(step.Action), planned),
            Does = ActionWords.Of(planned, values),
            MustBe = MustBe(planned, values),
            IsJudged = step.IsJudged,
            Picture = step.Picture is { } picture ? Path.GetFullPath(picture, _subject.Plant.Folder) : null,
            Planned = _times.Of(planned),
            Facts = [.. _facts.Of(planned, values)],
        };
    }

    private static string? MustBe(PlannedStep planned, ExpectationWords values)
    {
        if (planned.Expect is not { } expect) return null;
        var limit = planned.Step.Expect switch
        {
            Expectation.ByVehicle named => $" (limit {named.Name})",
            Expectation.ByIndex named => $" (limit {named.Name})",
            _ => "",
        };
        return values.Of(expect, planned.Indexes) + limit;
    }

    private Wording? Own(LocalText? text, PlannedNode planned) => text is null ? null : Wording.Of(text, _language, planned.WordFor);

    private Wording? Place(PlannedNode planned) =>
        _subject.Plant.Places.FirstOrDefault(place => place.Id == planned.OperatorPlace) is { } place ? Wording.Of(place.Text, _language) : null;
}
