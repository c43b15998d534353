using System.Collections.Immutable;
using EolSequencer.Language.Binding.Values;
using EolSequencer.Language.Diagnostics;
using EolSequencer.Language.Expressions;
using EolSequencer.Language.Plants;
using EolSequencer.Language.Syntax;
using EolSequencer.Language.Yaml;
using EolSequencer.Model.Devices;
using EolSequencer.Model.Expressions;
using EolSequencer.Model.Texts;
using EolSequencer.Model.Vehicles;

namespace EolSequencer.Language.Binding.Vehicles;

/// <summary>Reads a vehicle-type file. Its conditions are taken up into the batch and compiled with everything else.</summary>
internal static class VehicleTypeBinder
{
    private static readonly Words<CheckDigitRule> CheckDigits = new(
        ("require", CheckDigitRule.Require), ("warn", CheckDigitRule.Warn), ("off", CheckDigitRule.Off));

    private static readonly MapShape VinShape = new(
        "the rule for identification numbers", [new("check-digit", Forms.Word(CheckDigits), "what position 9 means (49 CFR 565.15)")], []);

    /// <summary>The keys of the file.</summary>
    public static MapShape File { get; } = new(
        "a vehicle type",
        [
            new("vehicle-type", Ids.FileForm, "id of the vehicle type"),
            new("options", Forms.Names(Ids.NameForm, Forms.Map(OptionBinder.Shape)), "what one vehicle is fitted with: one-of, or as: yes-no"),
            new("ecus", Forms.Names(Ids.NameForm, Forms.Map(ControlUnitBinder.UnitShape)), "control units"),
        ],
        [
            new("title", Forms.Texts, "what people call it"),
            new("vin", Forms.Map(VinShape), "rule for identification numbers"),
            new("impossible", Forms.List(Forms.Expression), "combinations of options nobody builds; all others are checked"),
            new("order", Forms.Names(Ids.NameForm, Forms.Map(FactBinder.Shape)), "facts of an order beside the options"),
            new("limits", Forms.Names(Ids.NameForm, LimitBinder.Form), "windows by name: one, by vehicle, or by index"),
            new("channels", Forms.Names(Ids.NameForm, ChannelBinder.Form), "what can be read, and how it is obtained"),
            new("actions", Forms.Names(Ids.NameForm, VehicleActionBinder.Form), "what can be done, and how"),
        ]);

    /// <summary>The vehicle type; null: already reported. A part with a fault is left out, so that others are still checked.</summary>
    /// <param name="texts">Where tables of limits are read from; null: the disk.</param>
    public static BoundVehicleType? Bind(YamlNode root, ExpressionBatch batch, Report report, PlantTexts? texts = null)
    {
        if (MapReader.Open(root, File, report) is not { } keys || keys.Find("vehicle-type") is not { } idNode) return null;
        if (Ids.OfFile(idNode, "a vehicle type", report) is not { } id) return null;

        var unitMap = keys.FreeMap("ecus");
        var facts = FactBinder.Bind(keys.FreeMap("order"), ControlUnitBinder.NamesOf(unitMap), report);
        var options = new VehicleType
        {
            Id = id,
            Title = keys.Texts("title")?.ToLocalText() ?? LocalText.Plain(id),
            CheckDigit = keys.Open("vin", VinShape)?.Word("check-digit", CheckDigits) ?? CheckDigitRule.Require,
            Options = OptionBinder.Bind(keys.FreeMap("options"), report),
            ControlUnits = [],
            Bus = new DeviceKind(DeviceKind.VehicleBus, false, NoChannels, NoActions),
        };
        var optionNames = new ExpressionNames { Vehicle = options };
        var names = new ExpressionNames { Vehicle = options with { OrderFacts = facts } };
        var parts = new VehicleParts(report, batch, names, ControlUnitBinder.Bind(unitMap, names, batch, report), texts ?? PlantTexts.OnDisk);
        var type = options with
        {
            Impossible = Impossible(keys, optionNames, batch),
            OrderFacts = FactBinder.WithUnits(facts, parts.Units),
            ControlUnits = parts.Units,
            Bus = options.Bus with
            {
                Channels = new ChannelBinder(parts).Bind(keys.FreeMap("channels")),
                Actions = new VehicleActionBinder(parts).Bind(keys.FreeMap("actions")),
            },
        };
        var limits = LimitBinder.Bind(keys.FreeMap("limits"), parts);
        return new BoundVehicleType(type, limits, [.. parts.Tables]);
    }

    private static ImmutableSortedDictionary<string, ChannelDescription> NoChannels { get; } =
        ImmutableSortedDictionary.Create<string, ChannelDescription>(StringComparer.Ordinal);

    private static ImmutableSortedDictionary<string, ActionDescription> NoActions { get; } =
        ImmutableSortedDictionary.Create<string, ActionDescription>(StringComparer.Ordinal);

    private static ImmutableArray<Expression> Impossible(MapReader keys, ExpressionNames names, ExpressionBatch batch) =>
    [
        .. keys.List("impossible")
            .Select(item => item.AsText("an impossible combination", keys.Report))
            .OfType<YamlScalar>()
            .Select(text => batch.Add(text, 0, text.Text.Length, names, Wanted.Truth)),
    ];
}
