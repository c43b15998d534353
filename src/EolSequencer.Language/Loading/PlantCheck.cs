using EolSequencer.Language.Binding.Advice;
using EolSequencer.Language.Binding.Devices;
using EolSequencer.Language.Binding.Plants;
using EolSequencer.Language.Binding.Reach;
using EolSequencer.Language.Binding.Stations;
using EolSequencer.Language.Binding.Vehicles;
using EolSequencer.Language.Diagnostics;
using EolSequencer.Language.ExpectedResults;
using EolSequencer.Language.Expressions;
using EolSequencer.Language.Plants;
using EolSequencer.Language.Scripts;
using EolSequencer.Language.Source;
using EolSequencer.Language.Yaml;
using EolSequencer.Model.Vehicles;

namespace EolSequencer.Language.Loading;

/// <summary>Checks some files of one plant, each by its kind.</summary>
/// <param name="knowledge">What is known of rehearsals; null: nothing.</param>
internal sealed class PlantCheck(PlantFolder folder, ExpressionCache cache, IRehearsalKnowledge? knowledge = null)
{
    private readonly HashSet<PlantFile> _files = [];
    private readonly HashSet<PlantFile> _seen = [];
    private readonly ExpectedPlant _tested = new(folder, cache, knowledge);
    private AskedSteps? _asked;
    private bool _isWhole;

    private Report Report => folder.Report;

    /// <summary>How many files are checked.</summary>
    public int Count => _files.Count;

    public void AddFile(string path)
    {
        if (folder.At(path) is { } file) _files.Add(file);
        else if (SourceFiles.TryRead(path, Report) is { } text) Report.Add(PlantCodes.UnknownKind, SourceText.WholeFile(text.Path), "this is no file of a plant");
    }

    public void AddFolder(string path)
    {
        var full = Path.TrimEndingDirectorySeparator(Path.GetFullPath(path));
        _isWhole |= full == folder.Root;
        foreach (var file in folder.Files.Where(file => file.Path.StartsWith(full + Path.DirectorySeparatorChar, StringComparison.Ordinal))) _files.Add(file);
    }

    /// <summary>Checks everything that was added, sequences first: what they use need not be looked at again.</summary>
    public void Run() => Run(static () => true);

    /// <summary>As above, as long as it is wanted.</summary>
    /// <param name="goesOn">Asked before each file.</param>
    /// <returns>False when the check was given up.</returns>
    public bool Run(Func<bool> goesOn)
    {
        if (_isWhole) folder.ReportDuplicates();
        var sequences = new List<SequenceLoad.Loaded>();
        foreach (var file in _files.Where(file => file.Kind == FileKind.Sequence))
        {
            if (!goesOn()) return false;
            if (Sequence(file) is { } loaded) sequences.Add(loaded);
        }

        // Which steps there are, and what none of them uses, is known when every sequence could be read.
        var isComplete = sequences.Count > 0 && sequences.Count == folder.Of(FileKind.Sequence).Count();
        if (isComplete) _asked = AskedSteps.In(sequences.Select(loaded => loaded.Sequence));
        if (isComplete && _isWhole) CheckUnused(sequences);
        foreach (var file in _files.Where(file => file.Kind != FileKind.Sequence && (file.Kind == FileKind.Fragment || !_seen.Contains(file))))
        {
            if (!goesOn()) return false;
            Check(file);
        }

        return true;
    }

    // A fault of one sequence says nothing about the next, so each has a report of its own.
    private SequenceLoad.Loaded? Sequence(PlantFile file)
    {
        var own = new Report();
        var loaded = SequenceLoad.Run(file, folder.Reporting(own), cache, withAdvice: true);
        _tested.Know(file, own.HasErrors ? null : loaded);
        foreach (var used in loaded?.Files ?? []) _seen.Add(used);
        if (loaded is not null && !own.HasErrors) UnusedAdvice.Names(file, loaded.Files.Where(used => used.Kind == FileKind.Fragment), own);
        Report.Absorb(own, static _ => true);
        return loaded;
    }

    private void CheckUnused(List<SequenceLoad.Loaded> sequences)
    {
        UnusedAdvice.Files(folder, _seen, Report);
        foreach (var type in folder.Of(FileKind.VehicleType))
        {
            var own = sequences.Where(loaded => loaded.Sequence.VehicleType.Id == type.Id).ToList();
            if (own.Count > 0) UnusedAdvice.Limits(type, own.SelectMany(loaded => loaded.UsedLimits).ToHashSet(StringComparer.Ordinal), Report);
        }
    }

    private void Check(PlantFile file)
    {
        if (file.Root is not { } root) return;
        switch (file.Kind)
        {
            case FileKind.VehicleType: Type(file); break;
            case FileKind.DeviceKind: DeviceKindBinder.Bind(root, Report); break;
            case FileKind.Station: StationBinder.Bind(file, folder); break;
            case FileKind.Order: OrderLoader.Bind(file, folder, cache); break;
            case FileKind.Fragment: Fragment(file); break;
            case FileKind.Plant: Plant(file); break;
            case FileKind.OperatorScript: ScriptBinder.Bind(root, Report, _asked); break;
            case FileKind.ExpectedResults: ExpectedFileBinder.Bind(file, _tested); break;
            default: PlantFiles.ReportUnknownKind(root, Report); break;
        }
    }

    private void Fragment(PlantFile file)
    {
        if (!_seen.Contains(file)) FragmentCheck.Run(file, folder, cache);
        if (!HasErrors(file)) UnusedAdvice.Names(file, folder.Of(FileKind.Fragment).Where(other => other != file && Uses(file, other)), Report);
    }

    // A misspelt name is not used; that is told already.
    private bool HasErrors(PlantFile file) => Report.InOrder.Any(finding => finding is { Severity: Severity.Error, Place.File.Length: > 0 } && Path.GetFullPath(finding.Place.File) == file.Path);

    private static bool Uses(PlantFile file, PlantFile other) => file.Root is YamlMap document && NamesUsed.In(document).Holds(other.Id);

    private void Type(PlantFile file)
    {
        var batch = new ExpressionBatch(Report, cache);
        if (VehicleTypeBinder.Bind(file.Root!, batch, Report) is not { } bound || !batch.Compile()) return;
        if (ReachChecks.Vehicles(bound.Type, bound.Limits, [], file.IdPlace, Report) is not { } vehicles) return;
        VehicleChecks.Run(bound.Type, vehicles, Report);
        LimitAdvice.Run(bound.Limits.Values, vehicles, Report);
    }

    // The route asks for options, so it is checked for each type that can come along it.
    private void Plant(PlantFile file)
    {
        var types = folder.Of(FileKind.VehicleType).ToList();
        if (types.Count == 0) Plant(file, null);
        foreach (var type in types) Plant(file, type);
    }

    private void Plant(PlantFile file, PlantFile? typeFile)
    {
        var batch = new ExpressionBatch(Report, cache);
        VehicleType? type = typeFile?.Root is { } root ? VehicleTypeBinder.Bind(root, batch, Report)?.Type : null;
        PlantBinder.Bind(file.Root!, type, batch, Report);
        batch.Compile();
    }
}
