using System.Collections.Immutable;
using EolSequencer.Language.Binding.Values;
using EolSequencer.Language.Diagnostics;
using EolSequencer.Language.Expressions;
using EolSequencer.Language.Syntax;
using EolSequencer.Language.Yaml;
using EolSequencer.Model.Judging;
using EolSequencer.Model.Sequences;
using EolSequencer.Model.Source;
using EolSequencer.Model.Texts;

namespace EolSequencer.Language.Binding.Sequences;

/// <summary>Binds a sequence whose plant, vehicle type and device kinds are known.</summary>
internal static class SequenceBinder
{
    /// <summary>The sequence, its expressions not yet compiled; null: already reported.</summary>
    public static CheckedSequence? Bind(SequenceHead head, BindingContext context)
    {
        var keys = head.Keys;
        var parameters = ParameterBinder.Bind(keys.FreeMap("parameters"), context.Roles.Keys, context.Report);
        var names = ArgumentNames.None(context.Vehicle.Type);
        foreach (var parameter in parameters) names = names.With(parameter.Name.Text, parameter.Shape);

        var top = DefaultsBinder.Inside(keys, Top(context) with { Arguments = names });
        var siblings = new Dictionary<string, SourcePlace>(StringComparer.Ordinal);
        var prepare = NodeListBinder.Bind(keys.List("prepare"), top, siblings);
        var steps = NodeListBinder.Bind(keys.List("steps"), top with { Results = prepare.Results }, siblings);

        // Whatever happened before, these run: no result is sure to be there.
        var always = NodeListBinder.Bind(keys.List("always"), top, siblings);
        var after = NodeListBinder.Bind(keys.List("after-verdict"), top with { IsAfterVerdict = true }, siblings);
        if (keys.Find("steps") is YamlList { Items.Count: 0 } none) context.Report.Add(SequenceCodes.Empty, none.Place, "the sequence holds no steps");

        foreach (var part in (ImmutableArray<Node>[])[prepare.Nodes, steps.Nodes, always.Nodes, after.Nodes]) DependencyCheck.Run(part, context.Report);
        WordsCheck.Run(keys.FreeMap("words"), parameters, [.. prepare.Nodes, .. steps.Nodes, .. always.Nodes, .. after.Nodes], context);
        return new CheckedSequence
        {
            Id = head.Id,
            Title = keys.Texts("title")?.ToLocalText() ?? LocalText.Plain(head.Id),
            Revision = (int)(keys.Whole("revision") ?? 1),
            VehicleType = context.Vehicle.Type,
            StationKind = keys.Find("station-kind") is { } kind ? Ids.OfFile(kind, "'station-kind'", context.Report) ?? "" : "",
            Place = keys.Find("cycle-time")?.Place ?? keys.Find("sequence")?.Place ?? keys.Place,
            CycleTime = keys.Duration("cycle-time"),
            Roles = [.. head.Roles(context)],
            Parameters = Parameters(parameters, context.Report),
            Needs = Needs(keys, context),
            Conditions = ConditionsBinder.Bind(keys.FreeMap("conditions"), Top(context)),
            Words = WordsBinder.Bind(keys.FreeMap("words"), context.Report),
            Prepare = prepare.Nodes,
            Steps = steps.Nodes,
            Always = always.Nodes,
            AfterVerdict = after.Nodes,
            Sources = [],
            CompiledHash = "",
        };
    }

    /// <summary>Binds the steps of a fragment that no sequence uses, to find their faults.</summary>
    public static void BindAlone(FragmentFile fragment, string id, BindingContext context)
    {
        var inside = fragment.Inside(Top(context) with { Fragments = [id] });
        NodeListBinder.Bind(fragment.Keys.List("steps"), inside, new Dictionary<string, SourcePlace>(StringComparer.Ordinal));
    }

    private static Scope Top(BindingContext context) => new()
    {
        Context = context,
        Arguments = ArgumentNames.None(context.Vehicle.Type),
        Roles = context.Roles,
        Results = ResultScope.Start(),
        Defaults = new StepDefaults(null, StepClass.Function, OnFail.Continue, context.Plant.Decision, null),
    };

    private static ImmutableArray<SequenceParameter> Parameters(ImmutableArray<BoundParameter> parameters, Report report)
    {
        var known = ImmutableArray.CreateBuilder<SequenceParameter>(parameters.Length);
        foreach (var parameter in parameters)
        {
            if (parameter.Default is { } value) known.Add(new SequenceParameter(parameter.Name.Text, parameter.Shape, value));
            else if (!parameter.HasDefault) report.Add(SequenceCodes.NoDefault, parameter.Name.Place, $"'{parameter.Name.Text}' has no default, and nobody gives a sequence values");
        }

        return known.ToImmutable();
    }

    private static ImmutableArray<string> Needs(MapReader keys, BindingContext context)
    {
        var kinds = context.Plant.Route.Select(stop => stop.StationKind).ToList();
        return [.. keys.List("needs").Select(item => item.AsOneOf("a station kind needed before", kinds, context.Report)).OfType<string>()];
    }
}
