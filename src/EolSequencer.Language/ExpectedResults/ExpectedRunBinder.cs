using System.Collections.Immutable;
using EolSequencer.Language.Binding.Orders;
using EolSequencer.Language.Binding.Stations;
using EolSequencer.Language.Binding.Values;
using EolSequencer.Language.Diagnostics;
using EolSequencer.Language.Loading;
using EolSequencer.Language.Plants;
using EolSequencer.Language.Scripts;
using EolSequencer.Language.Syntax;
using EolSequencer.Language.Yaml;
using EolSequencer.Model.ExpectedResults;
using EolSequencer.Model.Judging;
using EolSequencer.Model.Plants;
using EolSequencer.Model.Ports;

namespace EolSequencer.Language.ExpectedResults;

/// <summary>Reads one test. What it does not say about vehicle, station, sequence and seed, the top of its file says.</summary>
/// <param name="name">The name of the test.</param>
internal sealed class ExpectedRunBinder(YamlScalar name, MapReader test, MapReader file, ExpectedPlant plant)
{
    private const long MostSeed = 1_000_000_000_000;

    private static readonly string[] VehicleKeys = ["order", "vin"];
    private static readonly Words<Verdict> Verdicts = new([.. Enum.GetValues<Verdict>().Select(verdict => (verdict.Word(), verdict))]);
    private static readonly Words<OtherSteps> OtherWords = new(("pass", OtherSteps.Pass), ("not-reached", OtherSteps.PassOrNotReached), ("any", OtherSteps.Any));

    /// <summary>The keys of a test that may stand at the top of the file as well, for all tests that have none of their own.</summary>
    public static MapKey[] CommonKeys { get; } =
    [
        new("station", Ids.FileNamed(Subject.Station), "id of the station"),
        new("sequence", Ids.FileNamed(Subject.Sequence), "id of the sequence; the one in force if nothing is said"),
        new("order", Forms.Named(Subject.Order), "order of the vehicle; or say its number with vin"),
        new("vin", Forms.Text, "number of the vehicle, whose order is looked for in the plant"),
        new("seed", Forms.Whole(0, MostSeed), "fixes all that the rehearsal leaves to chance; 1 if nothing is said"),
    ];

    /// <summary>The keys of a test.</summary>
    public static MapShape Shape { get; } = new(
        "a test",
        [new("verdict", Forms.Word(Verdicts), "the verdict of the whole run")],
        [
            .. CommonKeys,
            new("faults", Forms.List(Forms.Text), "what is wrong with the vehicle or its operator: NAME, NAME=VALUE, NAME@TIME"),
            new("operator", Ids.FileNamed(Subject.OperatorScript), "id of an operator script; the simulated person if nothing is said"),
            new("only", Forms.List(Forms.Text), "runs only these steps or groups, by id"),
            new("steps", Forms.Names(Forms.Text, ExpectedStepBinder.Form), "by id of the step: what must come of it"),
            new("others", Forms.Word(OtherWords), "what must come of all other steps; pass if nothing is said"),
        ]);

    private Report Report => plant.Folder.Report;

    /// <summary>The test; null: already reported.</summary>
    public ExpectedRun? Bind()
    {
        var faults = Faults();
        var script = test.Text("operator") is { } operatorId ? Script(operatorId) : null;
        var verdict = test.Word("verdict", Verdicts) is { } word ? new Stated<Verdict>(word, test.Find("verdict")!.Place) : null;
        var others = new Stated<OtherSteps>(test.Word("others", OtherWords) ?? OtherSteps.Pass, test.Find("others")?.Place ?? name.Place);
        var seed = Common("seed").Whole("seed") ?? 1;
        var station = Station();
        if (VehicleFile() is not var (order, orderAt) || station is null) return null;
        if (SequenceFile(order, station) is not { } sequenceFile || plant.Sequence(sequenceFile) is not { } loaded) return null;

        foreach (var misfit in StationFit.Check(station, loaded.Sequence, Common("sequence").Find("sequence")?.Place ?? name.Place)) Report.Add(misfit);
        var known = plant.Steps(sequenceFile, loaded);
        var only = Only(known);
        var steps = Steps(known);
        if (verdict is not null && steps.Length == (test.FreeMap("steps")?.Entries.Count ?? 0)) Contradictions.Find(loaded.Sequence, verdict, others, steps, Report);
        if (OrderLoader.Bind(order, plant.Folder, plant.Cache, loaded.Sequence.VehicleType) is not { } vehicle) return null;
        foreach (var misfit in OrderLoader.CheckType(vehicle, loaded.Sequence, orderAt.Place)) Report.Add(misfit);
        return verdict is null || Report.HasErrors ? null : new ExpectedRun
        {
            Name = name.Text,
            Place = name.Place,
            Sequence = loaded.Sequence,
            Plant = loaded.Plant,
            Station = station,
            Order = vehicle,
            Seed = (ulong)seed,
            Faults = faults,
            Script = script,
            Only = only,
            Verdict = verdict,
            Steps = steps,
            Others = others,
        };
    }

    /// <summary>The map that says a key: the test, or else the file.</summary>
    private MapReader Common(params string[] keys) => keys.Any(test.Has) ? test : file;

    private StationFile? Station()
    {
        if (Common("station").Text("station") is not { } id)
        {
            if (!Common("station").Has("station")) Report.Add(ExpectedCodes.NoVehicle, name.Place, $"'{name.Text}' does not say at which station");
            return null;
        }

        if (plant.Folder.Find(FileKind.Station, id.Text, id.Place) is not { } found || StationBinder.Bind(found, plant.Folder) is not { } station) return null;
        if (plant.Knowledge?.Serves(station) == false) Report.Add(ExpectedCodes.NotSimulated, id.Place, $"station '{station.Id}' has real devices");
        return station;
    }

    private (PlantFile File, YamlScalar At)? VehicleFile()
    {
        var keys = Common(VehicleKeys);
        if (!VehicleKeys.Any(keys.Has))
        {
            Report.Add(ExpectedCodes.NoVehicle, name.Place, $"'{name.Text}' does not say which vehicle");
            return null;
        }

        if (keys.ExactlyOne(VehicleKeys, "vehicle") is not { } key || keys.Text(key) is not { } text) return null;
        var found = key == "order" ? plant.Folder.Find(FileKind.Order, text.Text, text.Place) : OrderLoader.FileFor(text.Text, plant.Folder, text.Place);
        return found is null ? null : (found, text);
    }

    private PlantFile? SequenceFile(PlantFile order, StationFile station)
    {
        if (Common("sequence").Has("sequence")) return Common("sequence").Text("sequence") is { } id ? plant.Folder.Find(FileKind.Sequence, id.Text, id.Place) : null;
        return order.Root is { } root && OrderBinder.TypeOf(root, Report) is { } type
            ? SequenceFinder.In(plant.Folder, type.Text, station.StationKind, name.Place)
            : null;
    }

    private ImmutableArray<Stated<string>> Faults()
    {
        var faults = ImmutableArray.CreateBuilder<Stated<string>>();
        foreach (var node in test.List("faults"))
        {
            if (node.AsText("a fault", Report) is not { } text) continue;
            if (plant.Knowledge?.WhyNoFault(text.Text) is { } why) Report.Add(ExpectedCodes.UnknownFault, text.Place, why);
            else faults.Add(new Stated<string>(text.Text, text.Place));
        }

        return faults.DrainToImmutable();
    }

    private OperatorScript? Script(YamlScalar id) =>
        plant.Folder.Find(FileKind.OperatorScript, id.Text, id.Place)?.Root is { } root ? ScriptBinder.Bind(root, Report) : null;

    private ImmutableArray<string> Only(KnownSteps known) =>
        [.. test.List("only").Select(node => node.AsText("a path of 'only'", Report)).OfType<YamlScalar>().Where(path => known.Has(path, Report)).Select(path => path.Text)];

    private ImmutableArray<ExpectedStep> Steps(KnownSteps known)
    {
        var steps = (test.FreeMap("steps")?.Entries ?? []).Select(entry => ExpectedStepBinder.Read(entry.Key, entry.Value, known, Report)).OfType<ExpectedStep>().ToList();
        var exact = steps.Where(step => step.Ids is [_]).Select(step => (step.Ids[0], step.Index)).ToHashSet();
        return [.. steps.Select(step => step.Ids.Length == 1 ? step : step with { Ids = [.. step.Ids.Where(id => !exact.Contains((id, step.Index)))] })];
    }
}
