using System.Collections.Immutable;
using EolSequencer.Language.Diagnostics;
using EolSequencer.Language.Expressions;
using EolSequencer.Model.Devices;

namespace EolSequencer.Language.Binding.Sequences;

/// <summary>What holds at one place of a sequence. Immutable: a walk goes on with what the step before has returned.</summary>
internal sealed record Scope
{
    /// <summary>Groups may lie this deep in each other, fragments included.</summary>
    public const int MostDepth = 8;

    public required BindingContext Context { get; init; }

    /// <summary>Loop names and parameters.</summary>
    public required ArgumentNames Arguments { get; init; }

    /// <summary>The results judged before this place.</summary>
    public required ResultScope Results { get; init; }

    /// <summary>The devices that may be named; a fragment names its own only.</summary>
    public required ImmutableSortedDictionary<string, DeviceKind> Roles { get; init; }

    public required StepDefaults Defaults { get; init; }

    /// <summary>True: a group around says what is dangerous, or that nothing is.</summary>
    public bool IsCautioned { get; init; }

    /// <summary>True in <c>after-verdict</c>.</summary>
    public bool IsAfterVerdict { get; init; }

    public int Depth { get; init; }

    /// <summary>The fragments this place lies in, outermost first.</summary>
    public ImmutableArray<string> Fragments { get; init; } = [];

    public Report Report => Context.Report;

    /// <summary>What a condition or computation may name: everything.</summary>
    public ExpressionNames Names => Operands with { Roles = Roles };

    /// <summary>What a value in brackets may name: everything but channels.</summary>
    public ExpressionNames Operands => Static with { Results = Results, RunVerdict = IsAfterVerdict };

    /// <summary>What is known before the first step.</summary>
    public ExpressionNames Static => Arguments.Static;
}
