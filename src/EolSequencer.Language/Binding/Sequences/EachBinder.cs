using System.Collections.Immutable;
using EolSequencer.Language.Binding.Values;
using EolSequencer.Language.Binding.Vehicles;
using EolSequencer.Language.Expectations;
using EolSequencer.Language.Syntax;
using EolSequencer.Language.Yaml;
using EolSequencer.Model.Sequences;
using EolSequencer.Model.Values;

namespace EolSequencer.Language.Binding.Sequences;

/// <summary>Reads <c>each: { wheel: [fl, fr] }</c>; values are a list, <c>ecus</c>, or the indexes of a channel.</summary>
internal static class EachBinder
{
    /// <summary>The most instances of one group.</summary>
    private const int MostInstances = 1_000;

    /// <summary>The key that holds them.</summary>
    public static MapKey Key { get; } = new(
        "each", Forms.Names(Ids.FirstNameForm, Forms.Either(Ids.IndexList, Forms.Named(Subject.Channel))), "one instance per value: a list, ecus, or the indexes of a channel");

    public static ImmutableArray<LoopName> Bind(MapReader keys, Scope scope)
    {
        if (keys.FreeMap("each") is not { } map) return [];
        var loops = ImmutableArray.CreateBuilder<LoopName>(map.Entries.Count);
        var instances = 1L;
        foreach (var (key, value) in map.Entries)
        {
            var name = Ids.FirstName(key, "a loop name", scope.Report);
            if (name is not null && (scope.Arguments.Shapes.ContainsKey(name) || scope.Roles.ContainsKey(name)))
            {
                scope.Report.Add(NameCodes.Twice, key.Place, $"'{name}' is already the name of a device, loop or parameter here");
                name = null;
            }

            if (Values(value, scope) is not { IsEmpty: false } values || name is null) continue;
            loops.Add(new LoopName(name, values));
            instances *= values.Length;
            if (instances <= MostInstances) continue;
            scope.Report.Add(SequenceCodes.TooManyInstances, value.Place, $"the group would run {instances} times, {MostInstances} are allowed");
            return [];
        }

        return loops.ToImmutable();
    }

    /// <summary>The place inside the loops.</summary>
    public static ArgumentNames Inside(ImmutableArray<LoopName> loops, ArgumentNames around) =>
        loops.Aggregate(around, (sum, loop) => sum.With(loop.Name, ValueShape.OneOf(loop.Values.Select(value => value.Value))));

    private static ImmutableArray<LoopValue>? Values(YamlNode node, Scope scope)
    {
        if (node is YamlList) return Ids.IndexValues(node, "'each'", scope.Report) is { } written ? [.. written.Select(value => new LoopValue(value, null))] : null;
        if (node.AsText("the values of a loop", scope.Report) is not { } text) return null;
        if (text.Text == VehicleParts.AllUnits) return [.. scope.Context.Vehicle.Type.ControlUnits.Select(unit => new LoopValue(unit.Name, unit.When))];
        if (ChannelReference.Channel(ScalarPart.Whole(text), scope) is not { } found) return null;
        if (!found.Channel.Indexes.IsEmpty) return [.. found.Channel.Indexes.Select(index => new LoopValue(index.Value, index.When))];

        scope.Report.Add(SequenceCodes.NoIndex, text.Place, $"'{text.Text}' has no indexes to go through", "write a list of values");
        return null;
    }
}
