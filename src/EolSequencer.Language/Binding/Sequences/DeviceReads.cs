using EolSequencer.Language.Binding.Values;
using EolSequencer.Language.Diagnostics;
using EolSequencer.Language.Expectations;
using EolSequencer.Language.Syntax;
using EolSequencer.Model.Devices;
using EolSequencer.Model.Expressions;
using EolSequencer.Model.Sequences;
using EolSequencer.Model.Values;

namespace EolSequencer.Language.Binding.Sequences;

/// <summary>Binds what is asked of a device: <c>read</c>, <c>sample</c>, <c>await</c>. Null: already reported.</summary>
internal static class DeviceReads
{
    private static readonly Words<Reduction> Reductions = new(
        ("min", Reduction.Min),
        ("max", Reduction.Max),
        ("mean", Reduction.Mean),
        ("median", Reduction.Median),
        ("first", Reduction.First),
        ("last", Reduction.Last),
        ("range", Reduction.Range),
        ("count", Reduction.Count));

    /// <summary>The key that says what becomes of the readings.</summary>
    public static MapKey ReduceKey { get; } = new("reduce", Forms.Word(Reductions), "makes one value of the readings");

    public static BoundAction? Read(MapReader keys, Scope scope)
    {
        if (keys.Text("read") is not { } text || ChannelReference.Channel(ScalarPart.Whole(text), scope) is not { } found) return null;
        var (use, channel) = found;
        return new BoundAction(new StepAction.Read(use, channel), text.Place, channel.Shape)
        {
            Indexes = use.Index is null ? [.. channel.Indexes.Select(index => index.Value)] : [],
            Index = use.Index,
            IsInexact = Inexact.Is(channel),
        };
    }

    public static BoundAction? Sample(MapReader keys, Scope scope)
    {
        if (keys.Text("sample") is not { } text) return null;
        var found = ChannelReference.Channel(ScalarPart.Whole(text), scope);
        var lasts = Operands.Time(keys.Find("for"), "'for'", scope);
        var until = Conditions.Add(keys, "until", scope.Names, scope.Context.Batch);
        var every = Operands.Time(keys.Find("every"), "'every'", scope) ?? scope.Defaults.Every;
        var mayMiss = (int)(keys.Whole("may-miss") ?? 0);
        var reduce = Reduce(keys);
        if (keys.ExactlyOne(["for", "until"], "end") is null) return null;
        if (every is null && !keys.Has("every")) scope.Report.Add(SyntaxCodes.MissingKey, keys.Place, "it is not said how often is sampled", "add  every: 100 ms  or another time");
        if (found is not { } channel || every is null || reduce is not { } by || !CanBeSampled(channel, text, scope)) return null;

        return new BoundAction(
            new StepAction.Sample(channel.Use, channel.Channel, lasts, until, every, mayMiss, by),
            text.Place,
            by == Reduction.Count ? ValueShape.Count : channel.Channel.Shape)
        {
            Index = channel.Use.Index,
            IsInexact = Inexact.Is(by, channel.Channel),
        };
    }

    // Without a reduction a sample is there for its series, and its value is how many readings came.
    private static Reduction? Reduce(MapReader keys)
    {
        if (keys.Has("reduce") || !keys.Has("expect")) return keys.Has("reduce") ? keys.Word("reduce", Reductions) : Reduction.Count;
        keys.Report.Add(SyntaxCodes.MissingKey, keys.PlaceOf("expect"), "it is not said which one value of the readings is judged", "add  reduce: mean  or another");
        return null;
    }

    public static BoundAction? Await(MapReader keys, Scope scope)
    {
        var edge = keys.YesNo("edge") ?? false;
        return Conditions.Add(keys, "await", scope.Names, scope.Context.Batch) is { } condition
            ? new BoundAction(new StepAction.Await(condition, edge), keys.PlaceOf("await"), null)
            : null;
    }

    private static bool CanBeSampled((ChannelUse Use, ChannelDescription Channel) channel, Yaml.YamlScalar text, Scope scope)
    {
        if (channel.Channel.Shape.Kind is not (ValueKind.Number or ValueKind.Time))
        {
            scope.Report.Add(SequenceCodes.SampledNoNumber, text.Place, $"'{channel.Use}' is a {channel.Channel.Shape}, only numbers are sampled");
            return false;
        }

        if (channel.Use.Index is not null || channel.Channel.Indexes.IsEmpty) return true;
        scope.Report.Add(SequenceCodes.IndexMissing, text.Place, $"'{channel.Use}' does not say which of its indexes is sampled", $"write  {channel.Use}[{channel.Channel.Indexes[0].Value}]  or another");
        return false;
    }
}
