using EolSequencer.Language.Editing.Outline;
using EolSequencer.Language.Expressions.Compiling;
using EolSequencer.Language.Plants;
using EolSequencer.Language.Syntax;
using EolSequencer.Language.Yaml;
using EolSequencer.Model.Devices;
using EolSequencer.Model.Units;

namespace EolSequencer.Language.Editing.Names;

/// <summary>What can be named at a place, by what the text there is about.</summary>
internal static class Things
{
    public static IEnumerable<Thing> Of(Subject subject, Spot spot) => subject switch
    {
        Subject.Expression or Subject.Value => Expression(spot),
        Subject.Expectation => Expression(spot).Append(Limits(spot)),
        Subject.Channel => DeviceThings.Channels(spot).Append(new Thing("ecus", ProposalKind.Word, "the control units fitted")),
        Subject.Action => DeviceThings.Actions(spot),
        Subject.Fragment => Files(FileKind.Fragment, spot).Select(thing => thing with { Parts = () => Parameters(thing.Name, spot) }),
        Subject.VehicleType => Files(FileKind.VehicleType, spot),
        Subject.DeviceKind => Files(FileKind.DeviceKind, spot).Append(new Thing(DeviceKind.VehicleBus, ProposalKind.File, "the bus of the vehicle type") { Place = spot.TypeFile?.IdPlace }),
        Subject.Station => Files(FileKind.Station, spot),
        Subject.Sequence => Files(FileKind.Sequence, spot),
        Subject.Order => Files(FileKind.Order, spot),
        Subject.OperatorScript => Files(FileKind.OperatorScript, spot),
        Subject.StationKind => (spot.Plant?.Route ?? []).Select(stop => new Thing(stop.StationKind, ProposalKind.Name, "station kind of the route") { Place = spot.Folder.PlantFile?.IdPlace }),
        Subject.Place => (spot.Plant?.Places ?? []).Select(place => new Thing(place.Id, ProposalKind.Name, "place of the plant") { Place = Spot.PlaceIn(spot.Folder.PlantFile, "places", place.Id) }),
        Subject.Unit => UnitTable.All.Select(Unit),
        Subject.ControlUnit => ((spot.Caret.Root.Find("ecus") as OutlineMap)?.Entries ?? []).Select(unit => ControlUnit(unit.Key.Text, spot)).Append(new Thing("ecus", ProposalKind.Word, "all control units fitted")),
        _ => [],
    };

    public static Thing Unit(Unit unit) => new(unit.Symbol, ProposalKind.Unit, unit.Dimension.Word())
    {
        Text = $"units of {unit.Dimension.Word()}: {string.Join(", ", UnitTable.Of(unit.Dimension).Select(one => one.Symbol))}\nin expressions: .{unit.ExpressionName}",
    };

    /// <summary>The parameters of a fragment.</summary>
    public static IEnumerable<Thing> Parameters(string fragment, Spot spot)
    {
        var file = spot.Folder.Find(FileKind.Fragment, fragment);
        return (spot.Bindings.Fragment(file)?.Parameters ?? []).Select(parameter => new Thing(parameter.Name.Text, ProposalKind.Name, parameter.Shape.ToString())
        {
            Place = parameter.Name.Place,
            Values = DeviceThings.ValuesOf(parameter.Shape),
        });
    }

    /// <summary>The options of the vehicle type.</summary>
    public static IEnumerable<Thing> Options(Spot spot) => (spot.Vehicle?.Type.Options ?? []).Select(option => new Thing(option.Name, ProposalKind.Name, option.Shape.ToString())
    {
        Place = Spot.PlaceIn(spot.TypeFile, "options", option.Name),
        Values = DeviceThings.ValuesOf(option.Shape),
    });

    /// <summary>What an order says beside the options.</summary>
    public static IEnumerable<Thing> Facts(Spot spot) => (spot.Vehicle?.Type.OrderFacts ?? []).Select(fact => new Thing(fact.Name, ProposalKind.Name, fact.Shape.ToString())
    {
        Place = Spot.PlaceIn(spot.TypeFile, "order", fact.Name),
        Indexes = [.. fact.Indexes.Select(index => index.Value)],
        Values = DeviceThings.ValuesOf(fact.Shape),
        Parts = () => DeviceThings.UnitsOf(fact.Shape),
    });

    private static IEnumerable<Thing> Expression(Spot spot) =>
    [
        .. Arguments(spot),
        .. DeviceThings.Channels(spot),
        new Thing("vehicle", ProposalKind.Name, "options of the vehicle") { Parts = () => Options(spot).Append(new Thing("vin", ProposalKind.Name, "identification number")), Place = spot.TypeFile?.IdPlace },
        new Thing("order", ProposalKind.Name, "facts of the order") { Parts = () => Facts(spot), Place = spot.TypeFile?.IdPlace },
        new Thing("results", ProposalKind.Name, "values of earlier steps") { Parts = () => ResultThings.Of(spot) },
        new Thing("trace", ProposalKind.Name, "what earlier groups captured") { Parts = () => TraceThings.Of(spot) },
        new Thing("run", ProposalKind.Name, "the run; only in after-verdict") { Parts = () => [new Thing("verdict", ProposalKind.Name, "the roll-up") { Values = ["none", "pass", "inconclusive", "fail", "error"] }] },
        .. FunctionTable.Names.Select(name => new Thing(name, ProposalKind.Function, "function")),
    ];

    /// <summary>Loop names and parameters, innermost first.</summary>
    private static IEnumerable<Thing> Arguments(Spot spot)
    {
        foreach (var (map, _) in spot.Caret.Around.Reverse())
        {
            foreach (var entry in (map.Find("each") as OutlineMap)?.Entries ?? [])
            {
                var values = entry.Value switch
                {
                    OutlineList list => [.. list.Items.OfType<OutlineText>().Select(item => item.Text)],
                    OutlineText { Text: "ecus" } => [.. (spot.Vehicle?.Type.ControlUnits ?? []).Select(unit => unit.Name)],
                    _ => Array.Empty<string>(),
                };
                yield return new Thing(entry.Key.Text, ProposalKind.Name, "loop name") { Place = spot.PlaceOf(entry.Key), Values = values };
            }
        }

        foreach (var entry in (spot.Caret.Root.Find("parameters") as OutlineMap)?.Entries ?? [])
        {
            var choices = (entry.Value as OutlineMap)?.Find("one-of") as OutlineList;
            yield return new Thing(entry.Key.Text, ProposalKind.Name, "parameter") { Place = spot.PlaceOf(entry.Key), Values = [.. choices?.Items.OfType<OutlineText>().Select(item => item.Text) ?? []] };
        }
    }

    private static Thing Limits(Spot spot) => new("limits", ProposalKind.Name, "limits of the vehicle type")
    {
        Parts = () => (((spot.TypeFile?.Root as YamlMap)?.Find("limits")?.Value as YamlMap)?.Entries ?? []).Select(entry => new Thing(entry.Key.Text, ProposalKind.Name, Shown(entry.Value))
        {
            Text = entry.Value is YamlScalar ? "" : entry.Value.Source.Text[entry.Value.Start..entry.Value.End],
            Place = entry.Key.Place,
        }),
    };

    private static string Shown(YamlNode limit) => limit switch
    {
        YamlScalar one => one.Text,
        YamlList rows => $"limit with {rows.Items.Count} rows",
        _ => "limit by index",
    };

    private static Thing ControlUnit(string name, Spot spot) => new(name, ProposalKind.Name, "control unit") { Place = Spot.PlaceIn(spot.TypeFile, "ecus", name) };

    private static IEnumerable<Thing> Files(FileKind kind, Spot spot) => spot.Folder.Of(kind).Where(file => file.Id.Length > 0).Select(file => new Thing(file.Id, ProposalKind.File, $"{kind.Word()}, {file.RelativePath}")
    {
        Place = file.IdPlace,
        Text = ((file.Root as YamlMap)?.Find("title")?.Value as YamlScalar)?.Text ?? "",
    });
}
