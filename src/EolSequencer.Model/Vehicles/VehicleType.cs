using System.Collections.Immutable;
using EolSequencer.Model.Devices;
using EolSequencer.Model.Expressions;
using EolSequencer.Model.Texts;
using EolSequencer.Model.Values;

namespace EolSequencer.Model.Vehicles;

/// <summary>What all vehicles of one type have in common.</summary>
public sealed record VehicleType
{
    /// <summary>Unique in the plant.</summary>
    public required string Id { get; init; }

    /// <summary>What people call it.</summary>
    public required LocalText Title { get; init; }

    /// <summary>Whether position 9 of the identification number is a check digit here.</summary>
    public required CheckDigitRule CheckDigit { get; init; }

    /// <summary>What one vehicle may be fitted with, in written order.</summary>
    public required ImmutableArray<OptionDescription> Options { get; init; }

    /// <summary>Combinations that nobody builds.</summary>
    public ImmutableArray<Expression> Impossible { get; init; } = [];

    /// <summary>What an order says beside the options.</summary>
    public ImmutableArray<OrderFact> OrderFacts { get; init; } = [];

    /// <summary>The control units, in written order.</summary>
    public required ImmutableArray<ControlUnit> ControlUnits { get; init; }

    /// <summary>What the vehicle bus offers on this type.</summary>
    public required DeviceKind Bus { get; init; }
}

/// <summary>One option: yes or no, or one of several words.</summary>
public sealed record OptionDescription(string Name, ValueShape Shape);

/// <summary>A fact of an order.</summary>
/// <param name="Indexes">The index values; empty when the fact has no index.</param>
public sealed record OrderFact(string Name, ValueShape Shape, ImmutableArray<IndexValue> Indexes);

/// <summary>A control unit and where it answers.</summary>
/// <param name="Request">CAN identifier of requests to it (ISO 15765-2, normal addressing).</param>
/// <param name="Response">CAN identifier of its responses.</param>
/// <param name="DoIp">Logical address (ISO 13400-2); null when none is given.</param>
/// <param name="When">The vehicles that have it; null: all.</param>
public sealed record ControlUnit(string Name, uint Request, uint Response, int? DoIp, Expression? When);
