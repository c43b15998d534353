using System.Collections.Immutable;
using System.Globalization;
using EolSequencer.Language.Binding.Reach;
using EolSequencer.Language.Diagnostics;
using EolSequencer.Language.Loading;
using EolSequencer.Model.Planning;
using EolSequencer.Model.Plants;
using EolSequencer.Model.Sequences;
using EolSequencer.Model.Source;

namespace EolSequencer.Language.Binding.Advice;

/// <summary>Plans a sequence for all vehicles at once: how many steps each has, and how long they take.</summary>
internal sealed class PlanWalk
{
    /// <summary>Less waiting than this is not worth a line.</summary>
    private static readonly TimeSpan LeastWaiting = TimeSpan.FromSeconds(1);

    private readonly PlannedTimes _times;
    private readonly Report _report;
    private readonly HashSet<string> _exclusive;
    private readonly int _count;
    private readonly int[] _steps;
    private readonly int[] _judged;

    private PlanWalk(CheckedSequence sequence, int count, PlannedTimes times, Report report)
    {
        (_times, _report, _count) = (times, report, count);
        _exclusive = [.. sequence.Roles.Where(role => role.Kind.IsExclusive).Select(role => role.Role)];
        (_steps, _judged) = (new int[count], new int[count]);
    }

    public static SequencePlan Run(CheckedSequence sequence, NodeInstances instances, Plant plant, Report report)
    {
        var vehicles = instances.Vehicles;
        var walk = new PlanWalk(sequence, vehicles.Planned, plant.Planned, report);
        var load = walk.Series(instances.Tree);
        ImmutableArray<string> names = [.. vehicles.Names];
        var plan = new SequencePlan(
            sequence.Id,
            sequence.CycleTime,
            names,
            [.. Enumerable.Range(0, vehicles.Planned).Select(number => new PlannedVehicle(
                [.. names.Select(name => vehicles.ValueOf(number, name).ToString()!)], walk._steps[number], walk._judged[number], new TimeSpan(load.Total[number])))],
            vehicles.IsSample,
            vehicles.IsSample ? null : (int)vehicles.Combinations - vehicles.Planned);
        CheckCycle(plan, sequence, vehicles, report);
        return plan;
    }

    private static void CheckCycle(SequencePlan plan, CheckedSequence sequence, PossibleVehicles vehicles, Report report)
    {
        if (sequence.CycleTime is not { } cycle || plan.Vehicles.IsEmpty) return;
        var (number, longest) = plan.Vehicles.Index().MaxBy(one => one.Item.Time);
        if (longest.Time <= cycle) return;
        var many = plan.Vehicles.Count(vehicle => vehicle.Time > cycle);
        report.Add(AdviceCodes.CycleTooLong, sequence.Place, string.Create(CultureInfo.InvariantCulture,
            $"{Text(longest.Time)} are planned for a vehicle with {vehicles.Describe(number)}, the cycle is {Text(cycle)}; too long for {many} of {plan.Vehicles.Length} combinations"));
    }

    private PlannedLoad Series(ImmutableArray<Unrolled> items)
    {
        var load = new PlannedLoad(_count);
        foreach (var item in items) load.Add(Of(item));
        return load;
    }

    private PlannedLoad Of(Unrolled item) => item switch
    {
        Unrolled.Single single => OfStep(single.Step),
        Unrolled.Series series => OfGroup(series),
        Unrolled.Lanes lanes => OfLanes(lanes),
        _ => throw new InvalidOperationException("nothing else is unrolled"),
    };

    private PlannedLoad OfGroup(Unrolled.Series series)
    {
        var load = Series(series.Items);
        if (series.Group.Node.Caution is null) return load;
        var caution = new PlannedLoad(_count);
        Add(caution.Total, series.Group.Reached, _times.Caution);
        Add(caution.Person, series.Group.Reached, _times.Caution);
        load.Add(caution);
        return load;
    }

    private PlannedLoad OfStep(NodeInstance instance)
    {
        var (step, load) = ((Step)instance.Node, new PlannedLoad(_count));
        var time = StepTime.Of(step, _times, operand => PossibleVehicles.Known(operand, instance.Arguments));
        Add(load.Total, instance.Reached, time);
        if (step.Action.Prompt is not null || step.Caution is not null) Add(load.Person, instance.Reached, time);
        if (step.Action.RoleUsed is { } role && _exclusive.Contains(role)) Add(load.Device(role), instance.Reached, time);
        for (var vehicle = 0; vehicle < _count; vehicle++)
        {
            if (!instance.Reached.Maybe.Contains(vehicle)) continue;
            _steps[vehicle]++;
            if (step.IsJudged) _judged[vehicle]++;
        }

        return load;
    }

    private PlannedLoad OfLanes(Unrolled.Lanes lanes)
    {
        var all = lanes.All.Select(Series).ToList();
        if (lanes.Of is { Node: Together together }) Advise(together, all);
        return PlannedLoad.SideBySide(all, _count);
    }

    private void Advise(Together together, List<PlannedLoad> lanes)
    {
        var person = PlannedLoad.Waiting(lanes, lane => lane.Person.AsSpan().ContainsAnyExcept(0) ? lane.Person : null);
        if (person >= LeastWaiting)
        {
            _report.Add(AdviceCodes.SharedPerson, together.Place, $"{Named(together, lanes, lane => lane.Person.AsSpan().ContainsAnyExcept(0))} ask a person: up to {Text(person)} of waiting for each other");
        }

        foreach (var role in lanes.SelectMany(lane => lane.Devices.Keys).Distinct().Order(StringComparer.Ordinal))
        {
            var device = PlannedLoad.Waiting(lanes, lane => lane.Devices.GetValueOrDefault(role));
            if (device < LeastWaiting) continue;
            _report.Add(AdviceCodes.SharedDevice, together.Place, $"{Named(together, lanes, lane => lane.Devices.ContainsKey(role))} use '{role}', one at a time: up to {Text(device)} of waiting for each other");
        }
    }

    private static string Named(Together together, List<PlannedLoad> lanes, Func<PlannedLoad, bool> has) =>
        string.Join(" and ", together.Branches.Zip(lanes).Where(pair => has(pair.Second)).Select(pair => $"'{pair.First.Name}'"));

    private void Add(long[] ticks, Reached reached, TimeSpan time)
    {
        for (var vehicle = 0; vehicle < _count; vehicle++)
        {
            if (reached.Maybe.Contains(vehicle)) ticks[vehicle] += time.Ticks;
        }
    }

    private static string Text(TimeSpan time) => string.Create(CultureInfo.InvariantCulture, $"{time.TotalSeconds:0.#} s");
}
