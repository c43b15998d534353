using System.Collections.Immutable;
using EolSequencer.Language.Diagnostics;
using EolSequencer.Language.Expressions;
using EolSequencer.Language.Plants;
using EolSequencer.Model.Devices;
using EolSequencer.Model.Sequences;
using EolSequencer.Model.Source;
using EolSequencer.Model.Vehicles;

namespace EolSequencer.Language.Binding.Vehicles;

/// <summary>What the later parts of a vehicle type need of the earlier ones.</summary>
/// <param name="Names">What a <c>when</c> of the vehicle type may name: options and facts of the order.</param>
/// <param name="Units">The control units by name, in written order.</param>
/// <param name="Texts">Where tables of limits are read from.</param>
internal sealed record VehicleParts(Report Report, ExpressionBatch Batch, ExpressionNames Names, ImmutableArray<ControlUnit> Units, PlantTexts Texts)
{
    /// <summary>The word that means every control unit fitted.</summary>
    public const string AllUnits = "ecus";

    /// <summary>The tables that limits were read from.</summary>
    public List<SourceCopy> Tables { get; } = [];

    /// <summary>A control unit by name, or null, which has then been reported.</summary>
    public ControlUnit? Unit(string name, SourcePlace place)
    {
        if (Units.FirstOrDefault(unit => unit.Name == name) is { } found) return found;
        var near = Nearest.Of(name, Units.Select(unit => unit.Name).Append(AllUnits));
        Report.Add(VehicleCodes.UnknownUnit, place, $"{Shown.Quoted(name)} is no control unit of this vehicle type", near is null ? null : $"did you mean '{near}'?");
        return null;
    }

    /// <summary>An index over control units, each with the vehicles that have it.</summary>
    public ImmutableArray<IndexValue> IndexOver(IEnumerable<ControlUnit> units) => [.. units.Select(unit => new IndexValue(unit.Name, unit.When))];
}
