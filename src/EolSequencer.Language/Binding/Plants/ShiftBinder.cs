using System.Collections.Immutable;
using EolSequencer.Language.Binding.Values;
using EolSequencer.Language.Diagnostics;
using EolSequencer.Language.Plants;
using EolSequencer.Language.Syntax;
using EolSequencer.Language.Yaml;
using EolSequencer.Model.Plants;

namespace EolSequencer.Language.Binding.Plants;

/// <summary>Reads the shifts of a plant, which may pass midnight but not overlap.</summary>
internal static class ShiftBinder
{
    private const int MinutesOfDay = 24 * 60;

    /// <summary>The keys of a shift.</summary>
    public static MapShape Shape { get; } = new(
        "a shift",
        [new("from", TimesOfDay.Form, "when it begins: '06:00'"), new("to", TimesOfDay.Form, "when it ends: '14:00'")],
        []);

    public static ImmutableArray<Shift> Bind(YamlMap? map, Report report)
    {
        var shifts = ImmutableArray.CreateBuilder<Shift>();
        foreach (var (key, value) in map?.Entries ?? [])
        {
            var name = Ids.Name(key, "a shift", report);
            if (MapReader.Open(value, Shape, report) is not { } keys) continue;
            if (TimesOfDay.Read(keys, "from") is not { } from || TimesOfDay.Read(keys, "to") is not { } to || name is null) continue;

            var shift = new Shift(name, from, to);
            if (shifts.FirstOrDefault(other => Overlap(shift, other)) is { } taken) report.Add(PlantCodes.ShiftsOverlap, key.Place, $"'{name}' and '{taken.Name}' share some time");
            shifts.Add(shift);
        }

        return shifts.ToImmutable();
    }

    private static bool Overlap(Shift one, Shift other) => Begins(other.From, one) || Begins(one.From, other);

    private static bool Begins(TimeOnly moment, Shift within) => Minutes(within.From, moment) < Length(within);

    private static int Length(Shift shift) => Minutes(shift.From, shift.To) is var minutes and > 0 ? minutes : MinutesOfDay;

    private static int Minutes(TimeOnly from, TimeOnly to) => (int)(to - from).TotalMinutes;
}
