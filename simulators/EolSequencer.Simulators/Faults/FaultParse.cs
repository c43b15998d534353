using System.Diagnostics.CodeAnalysis;

namespace EolSequencer.Simulators.Faults;

/// <summary>A fault, or why a text is none.</summary>
public sealed record FaultParse
{
    private FaultParse(InjectedFault? fault, string? why) => (Fault, Why) = (fault, why);

    /// <summary>The fault; null when the text is none.</summary>
    public InjectedFault? Fault { get; }

    /// <summary>What is wrong and what may have been meant; null when nothing is.</summary>
    public string? Why { get; }

    /// <summary>True: there is a fault to inject.</summary>
    [MemberNotNullWhen(true, nameof(Fault))]
    [MemberNotNullWhen(false, nameof(Why))]
    public bool IsRight => Fault is not null;

    internal static FaultParse Right(InjectedFault fault) => new(fault, null);

    internal static FaultParse Wrong(string why) => new(null, why);
}
