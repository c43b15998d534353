using System.Collections.Immutable;
using EolSequencer.Language.Binding.Sequences;
using EolSequencer.Model.Sequences;
using EolSequencer.Model.Values;

namespace EolSequencer.Language.ExpectedResults;

/// <summary>The value that a checked step finds.</summary>
/// <param name="Indexes">The indexes of a channel that is read as a whole; otherwise empty.</param>
/// <param name="IsInexact">True: its number comes through floating point.</param>
internal sealed record FoundValue(ValueShape Shape, ImmutableArray<string> Indexes, bool IsInexact)
{
    /// <summary>What a step finds; null: nothing.</summary>
    public static FoundValue? Of(Step step) => step.Action switch
    {
        StepAction.Read read => new(read.Description.Shape, IndexesOf(read), Inexact.Is(read.Description)),
        StepAction.Sample { Reduce: Reduction.Count } => Exact(ValueShape.Count),
        StepAction.Sample sample => new(sample.Description.Shape, [], Inexact.Is(sample.Reduce, sample.Description)),
        StepAction.Compute compute => new(compute.Unit is { } unit ? ValueShape.Number(unit) : compute.Expression.Shape, [], compute.Expression.IsInexact),
        StepAction.Enter enter => Exact(enter.Shape),
        StepAction.Choose choose => Exact(ValueShape.OneOf(choose.Among)),
        StepAction.Scan => Exact(ValueShape.Text()),
        StepAction.SetTo { Target.Returns: { } shape } => Exact(shape),
        StepAction.Do { Target.Returns: { } shape } => Exact(shape),
        _ => null,
    };

    private static FoundValue Exact(ValueShape shape) => new(shape, [], false);

    private static ImmutableArray<string> IndexesOf(StepAction.Read read) =>
        read.Channel.Index is null ? [.. read.Description.Indexes.Select(index => index.Value)] : [];
}
