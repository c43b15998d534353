using System.Collections.Immutable;
using EolSequencer.Model.Judging;
using EolSequencer.Model.Sequences;
using EolSequencer.Simulators.ControlUnits;
using EolSequencer.Simulators.Physics;

namespace EolSequencer.Simulators.Faults;

/// <summary>A place in the simulation at which something can be made wrong.</summary>
public sealed class FaultPoint
{
    private static readonly Func<Equipment, string?, bool> Everywhere = (_, _) => true;

    private readonly Action<FaultTarget, string?, double> _apply;
    private readonly Func<Equipment, string?, bool> _isPossible;
    private Func<StepAction, bool>? _concerns;

    private FaultPoint(
        string name, FaultKind kind, StepClass @class, string effect, Action<FaultTarget, string?, double> apply, Func<Equipment, string?, bool>? isPossible)
    {
        (Name, Kind, Class, Effect, _apply, _isPossible) = (name, kind, @class, effect, apply, isPossible ?? Everywhere);
    }

    /// <summary>Unique; lower case and underscores.</summary>
    public string Name { get; }

    /// <summary>What kind of thing is wrong.</summary>
    public FaultKind Kind { get; }

    /// <summary>How much it matters that a sequence finds it: the class of the checks that should.</summary>
    public StepClass Class { get; }

    /// <summary>What it does, for people.</summary>
    public string Effect { get; }

    /// <summary>Where it can be; empty when there is one place only, or when any text will do.</summary>
    public ImmutableArray<string> Places { get; private init; } = [];

    /// <summary>Any text is a place: the pattern of a step id.</summary>
    public bool TakesAnyPlace { get; private init; }

    /// <summary>Kind of the instrument that it is a fault of; null: of vehicle, bus or person.</summary>
    public string? Device { get; private set; }

    /// <summary>Whether a point that wants a step can make this one go wrong.</summary>
    public bool Concerns(Step step) => _concerns?.Invoke(step.Action) ?? false;

    /// <summary>The number it has when none is given, just enough to be wrong; null when it has no number.</summary>
    public double? Number { get; private init; }

    /// <summary>Unit of the number; empty: a count or none.</summary>
    public string Unit { get; private init; } = "";

    /// <summary>True when the number is given by choice and means "for ever" when left out.</summary>
    public bool NumberIsOptional { get; private init; }

    /// <summary>The same point, as a fault of an instrument.</summary>
    internal FaultPoint Of(string device)
    {
        Device = device;
        return this;
    }

    internal bool IsPossible(Equipment equipment, string? place) => _isPossible(equipment, place);

    internal void Apply(FaultTarget target, string? place, double number) => _apply(target, place, number);

    internal static FaultPoint One(
        string name, FaultKind kind, StepClass @class, string effect, Action<FaultTarget> apply, Func<Equipment, bool>? isPossible = null) =>
        new(name, kind, @class, effect, (target, _, _) => apply(target), Of(isPossible));

    internal static FaultPoint OneNumber(
        string name, FaultKind kind, StepClass @class, string effect, double number, string unit, Action<FaultTarget, double> apply,
        Func<Equipment, bool>? isPossible = null) =>
        new(name, kind, @class, effect, (target, _, value) => apply(target, value), Of(isPossible)) { Number = number, Unit = unit };

    internal static FaultPoint For(
        string name, FaultKind kind, StepClass @class, string effect, IEnumerable<string> places, Action<FaultTarget, int> apply,
        Func<Equipment, string?, bool>? isPossible = null)
    {
        ImmutableArray<string> all = [.. places];
        return new(name, kind, @class, effect, (target, place, _) => apply(target, all.IndexOf(place!)), isPossible) { Places = all };
    }

    internal static FaultPoint ForNumber(
        string name, FaultKind kind, StepClass @class, string effect, IEnumerable<string> places, double number, string unit,
        Action<FaultTarget, int, double> apply, Func<Equipment, string?, bool>? isPossible = null)
    {
        ImmutableArray<string> all = [.. places];
        return new(name, kind, @class, effect, (target, place, value) => apply(target, all.IndexOf(place!), value), isPossible)
        {
            Places = all,
            Number = number,
            Unit = unit,
        };
    }

    internal static FaultPoint ForUnit(string name, FaultKind kind, StepClass @class, string effect, Action<FaultTarget, ControlUnit> apply) =>
        ForUnitNumber(name, kind, @class, effect, null, "", (target, unit, _) => apply(target, unit));

    internal static FaultPoint ForUnitNumber(
        string name, FaultKind kind, StepClass @class, string effect, double? number, string unit, Action<FaultTarget, ControlUnit, double> apply) =>
        new(name, kind, @class, effect, (target, place, value) => apply(target, target.Network.Find(place!)!, value), IsUnitFitted)
        {
            Places = [.. UnitTypes.Names],
            Number = number,
            Unit = unit,
        };

    internal static FaultPoint ForStep(string name, FaultKind kind, StepClass @class, string effect, Func<StepAction, bool> concerns, Action<FaultTarget, string> apply) =>
        new(name, kind, @class, effect, (target, place, _) => apply(target, place!), null) { TakesAnyPlace = true, _concerns = concerns };

    internal static FaultPoint Lasting(string name, FaultKind kind, StepClass @class, string effect, Action<FaultTarget, TimeSpan?> apply) =>
        new(name, kind, @class, effect, (target, _, value) => apply(target, value > 0 ? TimeSpan.FromSeconds(value) : null), null)
        {
            Number = 0,
            Unit = "s",
            NumberIsOptional = true,
        };

    internal static bool IsUnitFitted(Equipment equipment, string? unit) => Array.Exists(UnitTypes.All, type => type.Name == unit && type.IsFitted(equipment));

    private static Func<Equipment, string?, bool>? Of(Func<Equipment, bool>? isPossible) =>
        isPossible is null ? null : (equipment, _) => isPossible(equipment);
}
