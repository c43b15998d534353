using System.Collections.Immutable;
using EolSequencer.Model.Devices;
using EolSequencer.Model.Expressions;
using EolSequencer.Model.Texts;

namespace EolSequencer.Model.Sequences;

/// <summary>Steps under one id, once or for each value of its loop names; a used fragment is a group too.</summary>
public sealed record Group : Node
{
    /// <summary>The steps, groups and branches inside, in order.</summary>
    public required ImmutableArray<Node> Children { get; init; }

    /// <summary>Steps that run after the children whatever happened in the group.</summary>
    public ImmutableArray<Node> Always { get; init; } = [];

    /// <summary>The loop names, outermost first; empty: once.</summary>
    public ImmutableArray<LoopName> Each { get; init; } = [];

    /// <summary>The fragment used, or null; its parameters are <see cref="Arguments"/> and nothing of the outside is seen inside.</summary>
    public string? Fragment { get; init; }

    /// <summary>The values of the fragment's parameters.</summary>
    public ImmutableArray<StepAction.Argument> Arguments { get; init; } = [];

    /// <summary>How values of names read on a screen.</summary>
    public ImmutableArray<Words> Words { get; init; } = [];

    /// <summary>True: its prompts stand on one screen and end in whatever order.</summary>
    public bool AnyOrder { get; init; }

    /// <summary>True: after an interruption the whole group runs again.</summary>
    public bool RepeatOnResume { get; init; }

    /// <summary>The channels whose readings are kept as a trace while the group runs; null: none.</summary>
    public Capture? Capture { get; init; }
}

/// <summary>A name that takes one value after the other.</summary>
public sealed record LoopName(string Name, ImmutableArray<LoopValue> Values);

/// <summary>A value of a loop name; <paramref name="When"/> leaves it out for vehicles it does not apply to (a control unit not fitted).</summary>
public sealed record LoopValue(string Value, Expression? When);

/// <summary>How one value of a name reads on a screen.</summary>
public sealed record Words(string Name, string Value, LocalText Text);

/// <summary>Which channels are kept while a group runs.</summary>
public sealed record Capture(ImmutableArray<CapturedChannel> Channels);

/// <summary>A channel that is kept as a trace.</summary>
/// <param name="Channel">Without an index: every index that the vehicle has.</param>
/// <param name="Every">How often; null: every reading of a broadcast signal, a polled channel as its device kind says.</param>
public sealed record CapturedChannel(ChannelUse Channel, ChannelDescription Description, TimeSpan? Every);
