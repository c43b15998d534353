using System.Collections.Immutable;
using EolSequencer.Language.Binding.Values;
using EolSequencer.Language.Diagnostics;
using EolSequencer.Language.Expressions;
using EolSequencer.Language.Plants;
using EolSequencer.Language.Syntax;
using EolSequencer.Language.Yaml;
using EolSequencer.Model.Judging;
using EolSequencer.Model.Plants;
using EolSequencer.Model.Texts;
using EolSequencer.Model.Vehicles;

namespace EolSequencer.Language.Binding.Plants;

/// <summary>Reads <c>plant.yaml</c> for one vehicle type, whose options the route may ask for.</summary>
internal static class PlantBinder
{
    private static readonly Words<Decision> Decisions = new(("simple", Decision.Simple), ("guarded", Decision.Guarded));
    private static readonly Words<OverdueRule> OverdueRules = new(("refuse", OverdueRule.Refuse), ("flag", OverdueRule.Flag));
    private static readonly TimeSpan ResumeWithin = TimeSpan.FromMinutes(30);

    private static readonly MapShape Stop = new(
        "a stop of the route",
        [new("station-kind", Ids.FileForm, "the station kind")],
        [new("when", Forms.Expression, "vehicles that have to pass it, by their options")]);

    /// <summary>The keys of the file.</summary>
    public static MapShape File { get; } = new(
        "a plant",
        [
            new("plant", Ids.FileForm, "id of the plant"),
            new("zone", Forms.Text, "time zone (IANA name) of everything people read; stamps are kept in UTC"),
            new("route", Forms.List(Forms.Either(Ids.FileForm, Forms.Map(Stop))), "station kinds a vehicle must pass, in this order"),
        ],
        [
            new("title", Forms.Texts, "what people call it"),
            new("day-starts", TimesOfDay.Form, "when the production day begins, in quotes: '06:00'"),
            new("shifts", Forms.Names(Ids.NameForm, Forms.Map(ShiftBinder.Shape)), "shifts, for statistics and checks; may pass midnight, must not overlap"),
            new("decision", Forms.Word(Decisions), "decision rule where a step says none"),
            new("resume-within", Forms.Duration(TimeSpan.Zero, TimeSpan.FromDays(7)), "an interrupted run older than this ends as interrupted"),
            new("overdue-instruments", Forms.Word(OverdueRules), "production runs with an instrument that is overdue for calibration: refuse them, or flag them"),
            new("overdue-check", Forms.Word(OverdueRules), "production runs at a station whose check against its reference is due or not passed: refuse them, or flag them"),
            new("languages", Forms.List(LanguageCheck.Form), "languages its people read (ISO 639-1); a text in languages that lacks one is told"),
            new("planned", Forms.Map(PlannedTimesBinder.Shape), "what a plan counts for prompts and exchanges"),
            new("places", Forms.Names(Ids.NameForm, Forms.Texts), "where an operator stands; steps name them with 'place'"),
            CatalogueBinder.Key,
        ]);

    /// <summary>The plant; null: already reported.</summary>
    /// <param name="type">Null where the plant has no vehicle type yet; conditions of the route are then not looked at.</param>
    public static Plant? Bind(YamlNode root, VehicleType? type, ExpressionBatch batch, Report report)
    {
        if (MapReader.Open(root, File, report) is not { } keys || keys.Find("plant") is not { } idNode) return null;
        if (Ids.OfFile(idNode, "a plant", report) is not { } id) return null;
        var languages = LanguageCheck.Read(keys);
        return new Plant
        {
            Id = id,
            Title = keys.Texts("title")?.ToLocalText() ?? LocalText.Plain(id),
            Folder = Path.GetDirectoryName(Path.GetFullPath(root.Source.Path))!,
            Zone = Zone(keys) ?? "UTC",
            DayStarts = TimesOfDay.Read(keys, "day-starts") ?? TimeOnly.MinValue,
            Shifts = ShiftBinder.Bind(keys.FreeMap("shifts"), report),
            Decision = keys.Word("decision", Decisions) ?? Decision.Simple,
            ResumeWithin = keys.Duration("resume-within") ?? ResumeWithin,
            OverdueInstruments = keys.Word("overdue-instruments", OverdueRules) ?? OverdueRule.Refuse,
            OverdueCheck = keys.Word("overdue-check", OverdueRules) ?? OverdueRule.Refuse,
            Route = Route(keys, type, batch),
            Languages = languages,
            Planned = PlannedTimesBinder.Read(keys),
            Places = Places(keys.FreeMap("places"), languages, report),
            Nonconformities = CatalogueBinder.Read(keys.FreeMap("nonconformities"), languages, report),
        };
    }

    private static string? Zone(MapReader keys)
    {
        if (keys.Text("zone") is not { } text) return null;
        if (TimeZoneInfo.TryFindSystemTimeZoneById(text.Text, out var zone) && zone.HasIanaId) return text.Text;

        var near = Nearest.Of(text.Text, TimeZoneInfo.GetSystemTimeZones().Where(known => known.HasIanaId).Select(known => known.Id));
        keys.Report.Add(PlantCodes.UnknownZone, text.Place, $"{Shown.Quoted(text.Text)} is no time zone that this computer knows", near is null ? null : $"did you mean '{near}'?");
        return null;
    }

    private static ImmutableArray<RouteStop> Route(MapReader keys, VehicleType? type, ExpressionBatch batch)
    {
        var names = new ExpressionNames { Vehicle = type };
        var stops = ImmutableArray.CreateBuilder<RouteStop>();
        foreach (var item in keys.List("route"))
        {
            var inner = item is YamlMap ? MapReader.Open(item, Stop, keys.Report) : null;
            var node = item is YamlMap ? inner?.Find("station-kind") : item;
            if (node is null || Ids.OfFile(node, "a station kind", keys.Report) is not { } kind) continue;
            if (stops.Any(stop => stop.StationKind == kind)) keys.Report.Add(PlantCodes.StopTwice, node.Place, $"'{kind}' stands in the route already");
            else stops.Add(new RouteStop(kind, inner is null || type is null ? null : Conditions.Add(inner, "when", names, batch)));
        }

        return stops.ToImmutable();
    }

    private static ImmutableArray<PlantPlace> Places(YamlMap? map, ImmutableArray<string> languages, Report report)
    {
        var places = ImmutableArray.CreateBuilder<PlantPlace>();
        foreach (var (key, value) in map?.Entries ?? [])
        {
            var name = Ids.Name(key, "a place", report);
            if (value.AsTexts($"the place '{key.Text}'", report) is not { } text || name is null) continue;
            LanguageCheck.Run(text, languages, report);
            places.Add(new PlantPlace(name, text.ToLocalText()));
        }

        return places.ToImmutable();
    }
}
