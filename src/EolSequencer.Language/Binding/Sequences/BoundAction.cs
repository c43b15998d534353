using System.Collections.Immutable;
using EolSequencer.Model.Expressions;
using EolSequencer.Model.Sequences;
using EolSequencer.Model.Source;
using EolSequencer.Model.Values;

namespace EolSequencer.Language.Binding.Sequences;

/// <summary>What a step does, and what value it finds by doing it.</summary>
/// <param name="Place">Where the action's own value stands.</param>
/// <param name="Value">Type of the value found; null when none is found, or when <see cref="Computed"/> says.</param>
internal sealed record BoundAction(StepAction Action, SourcePlace Place, ValueShape? Value)
{
    /// <summary>The expression whose own type is the value's.</summary>
    public Expression? Computed { get; init; }

    /// <summary>The indexes of a channel that is read as a whole; otherwise empty.</summary>
    public ImmutableArray<string> Indexes { get; init; } = [];

    /// <summary>The index of the one value that is read; null when there is none.</summary>
    public IndexUse? Index { get; init; }

    /// <summary>True: the number comes through floating point.</summary>
    public bool IsInexact { get; init; }

    /// <summary>True: a value is found, of whatever type.</summary>
    public bool FindsValue => Value is not null || Computed is not null;

    /// <summary>True: a condition ends the step, so that it makes sense to ask how long that takes.</summary>
    public bool HasCondition => Action is StepAction.Ask { Until: not null } or StepAction.Await;
}
