using System.Collections.Immutable;
using EolSequencer.Model.Devices;
using EolSequencer.Model.Expressions;
using EolSequencer.Model.Ports;
using EolSequencer.Model.Texts;
using EolSequencer.Model.Units;
using EolSequencer.Model.Values;

namespace EolSequencer.Model.Sequences;

/// <summary>The one thing a step does.</summary>
public abstract record StepAction
{
    private StepAction() { }

    /// <summary>The prompt it puts in front of a person; null when it needs none.</summary>
    public PromptKind? Prompt => this switch
    {
        Ask { Until: null } => PromptKind.Confirm,
        Ask => PromptKind.Act,
        Judge => PromptKind.Judge,
        Enter => PromptKind.Enter,
        Scan => PromptKind.Scan,
        Choose => PromptKind.Choose,
        _ => null,
    };

    /// <summary>The device role that the action itself reads or moves; null when it is a person's, a condition's or nobody's.</summary>
    public string? RoleUsed => this switch
    {
        Read read => read.Channel.Role,
        Sample sample => sample.Channel.Role,
        SetTo set => set.Role,
        Do act => act.Role,
        _ => null,
    };

    /// <summary>A person does something; with <paramref name="Until"/> a device confirms it, else the person does.</summary>
    /// <param name="Until">The condition that ends the step; null when a person confirms.</param>
    /// <param name="Edge">True (default): the condition must be seen false before it counts as true.</param>
    public sealed record Ask(LocalText Text, Expression? Until, bool Edge) : StepAction;

    /// <summary>A person decides: in order or not.</summary>
    public sealed record Judge(LocalText Text) : StepAction;

    /// <summary>A person types a value.</summary>
    public sealed record Enter(LocalText Text, ValueShape Shape) : StepAction;

    /// <summary>A person scans a code.</summary>
    public sealed record Scan(LocalText Text) : StepAction;

    /// <summary>A person picks one of several.</summary>
    public sealed record Choose(LocalText Text, ImmutableArray<string> Among) : StepAction;

    /// <summary>One reading of a channel, or of every index of it.</summary>
    public sealed record Read(ChannelUse Channel, ChannelDescription Description) : StepAction;

    /// <summary>Readings at 0, every, 2·every … strictly before <paramref name="For"/>, or until a condition; reduced to one value.</summary>
    /// <param name="MayMiss">How many readings may be missing; 0 when not written.</param>
    public sealed record Sample(
        ChannelUse Channel, ChannelDescription Description, Operand? For, Expression? Until, Operand Every, int MayMiss, Reduction Reduce) : StepAction;

    /// <summary>Waits until a condition is true.</summary>
    public sealed record Await(Expression Condition, bool Edge) : StepAction;

    /// <summary>Lets time pass.</summary>
    public sealed record Wait(Operand Duration) : StepAction;

    /// <summary><c>set ROLE.ACTION, to: VALUE</c>.</summary>
    /// <param name="Index">Which one of an indexed action; null exactly when it has no index.</param>
    public sealed record SetTo(string Role, ActionDescription Target, IndexUse? Index, Operand To) : StepAction;

    /// <summary><c>do ROLE.ACTION, with: { … }</c>.</summary>
    /// <param name="Index">Which one of an indexed action; null exactly when it has no index.</param>
    public sealed record Do(string Role, ActionDescription Target, IndexUse? Index, ImmutableArray<Argument> With) : StepAction;

    /// <summary>A value computed from readings and results.</summary>
    /// <param name="Unit">The unit of a bare number; null when the expression brings its own or the value has none.</param>
    public sealed record Compute(Expression Expression, Unit? Unit) : StepAction;

    /// <summary>A named value handed to a device or a fragment.</summary>
    public sealed record Argument(string Name, Operand Value);
}
