using EolSequencer.Model.Expressions;
using EolSequencer.Model.Judging;
using EolSequencer.Model.Traces;
using EolSequencer.Model.Values;

namespace EolSequencer.Language.Binding.Reach;

/// <summary>What a condition sees while the checker tries one possible vehicle: its options and what is known at load.</summary>
internal sealed class VehicleScope(IReadOnlyDictionary<string, Value> known, Arguments arguments) : ExpressionScope
{
    /// <summary>The name under which a combination holds a fact of the order.</summary>
    public static string FactName(string fact) => "order." + fact;

    public override Value Vehicle(string option) => known.GetValueOrDefault(option) ?? throw new Undecided();

    public override Value Order(string fact, string? index) =>
        index is null && known.GetValueOrDefault(FactName(fact)) is { } value ? value : throw new Undecided();

    public override Value Argument(string name) => arguments.Find(name) ?? throw new Undecided();

    protected override Value NoValue(int slot) => throw new Undecided();

    public override int Edges(int slot) => throw new Undecided();

    public override ResultView? Result(int slot) => throw new Undecided();

    public override Trace Trace(int slot) => throw new Undecided();

    public override Verdict RunVerdict => throw new Undecided();
}
