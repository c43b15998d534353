using System.Collections.Immutable;
using EolSequencer.Model.Devices;
using EolSequencer.Model.Values;
using EolSequencer.Model.Vehicles;

namespace EolSequencer.Language.Expressions;

/// <summary>What an expression at one place may name. Immutable; share the parts, they are recognised by reference.</summary>
internal sealed record ExpressionNames
{
    /// <summary>First names that mean something of their own: no role, loop name or parameter may be called so.</summary>
    public static ImmutableArray<string> Reserved { get; } = ["vehicle", "order", "results", "trace", "run"];

    /// <summary><c>vehicle.OPTION</c>, <c>vehicle.vin</c>, <c>order.FACT</c>, <c>order.FACT[index]</c>; null: neither.</summary>
    public VehicleType? Vehicle { get; init; }

    /// <summary><c>ROLE.CHANNEL</c>; empty where only what is known before the run may be named.</summary>
    public ImmutableSortedDictionary<string, DeviceKind> Roles { get; init; } = NoRoles;

    /// <summary>Loop names and parameters; a name with choices may stand as an index.</summary>
    public ImmutableSortedDictionary<string, ValueShape> Arguments { get; init; } = NoArguments;

    /// <summary><c>results.…</c>; null: no result may be named.</summary>
    public ResultScope? Results { get; init; }

    /// <summary>True where <c>run.verdict</c> is known: in <c>after-verdict</c>.</summary>
    public bool RunVerdict { get; init; }

    private static ImmutableSortedDictionary<string, DeviceKind> NoRoles { get; } =
        ImmutableSortedDictionary.Create<string, DeviceKind>(StringComparer.Ordinal);

    private static ImmutableSortedDictionary<string, ValueShape> NoArguments { get; } =
        ImmutableSortedDictionary.Create<string, ValueShape>(StringComparer.Ordinal);
}
