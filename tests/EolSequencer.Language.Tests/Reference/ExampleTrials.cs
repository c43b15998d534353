using System.Collections.Concurrent;
using System.Globalization;
using System.Text;
using System.Text.RegularExpressions;
using EolSequencer.Language.Diagnostics;
using EolSequencer.Language.Expressions;
using EolSequencer.Language.Loading;
using EolSequencer.Language.Plants;

namespace EolSequencer.Language.Tests.Reference;

/// <summary>Tries the examples of a place, each in a file of its own, until each loads or has been tried with everything.</summary>
internal sealed partial class ExampleTrials : IDisposable
{
    /// <summary>The id of a file whose example does not say another; each file gets one of its own.</summary>
    private const string Odd = "odd";

    private static readonly ConcurrentDictionary<string, Lazy<(IReadOnlyList<string> Good, IReadOnlyList<string> Bad)>> Done = new(StringComparer.Ordinal);

    private readonly DemoCopy _plant = new();

    private ExampleTrials() => _plant.Write("vehicle-types/small.yaml", ExamplePlaces.SmallType);

    public void Dispose() => _plant.Dispose();

    /// <summary>What came of the examples of a place, tried once for all tests: the files that load, and what was found last about the examples of which none does.</summary>
    public static (IReadOnlyList<string> Good, IReadOnlyList<string> Bad) Of(string place) => Done.GetOrAdd(place, name => new(() => Run(name))).Value;

    private static (IReadOnlyList<string> Good, IReadOnlyList<string> Bad) Run(string name)
    {
        using var trials = new ExampleTrials();
        return trials.Try(name);
    }

    private (IReadOnlyList<string> Good, IReadOnlyList<string> Bad) Try(string name)
    {
        var place = ExamplePlaces.Of(name);
        var (good, bad) = (new List<string>(), new List<string>());
        List<(ReferenceRow Row, string Example)> open = [.. ReferenceText.Rows().Where(row => row.Place == name).SelectMany(row => row.Examples.Select(example => (row, example)))];
        for (var which = 0; open.Count > 0 && which < place.Bases.Length; which++)
        {
            var files = open.Select((one, index) => (one.Row, one.Example, Text: place.With(one.Row, one.Example, which), Folder: string.Create(CultureInfo.InvariantCulture, $"tried-{which}-{index}"))).ToList();
            var found = PlantChecker.Check(files.ConvertAll(file => Put(file.Folder, file.Text)), ExpressionCache.None).Diagnostics.Where(finding => finding.Severity == Severity.Error).ToList();
            open = [];
            foreach (var file in files)
            {
                var own = found.Where(finding => finding.Place.File.Contains(file.Folder + "/", StringComparison.Ordinal)).ToList();
                if (own.Count == 0) good.Add(file.Text);
                else if (which + 1 < place.Bases.Length) open.Add((file.Row, file.Example));
                else bad.Add($"line {file.Row.Line}, {file.Example}: {own[0].Code.Id} {own[0].Found}");
            }

            bad.AddRange(found.Where(finding => !files.Exists(file => finding.Place.File.Contains(file.Folder + "/", StringComparison.Ordinal))).Select(finding => $"{finding}"));
        }

        return (good, bad);
    }

    // A file of a kind and id that the demo plant has already stands in its place, in a plant of its own.
    private string Put(string folder, string text)
    {
        var header = FileHeader.Of(Encoding.UTF8.GetBytes(text)) ?? throw new InvalidOperationException($"this is no file:\n{text}");
        if (header.Kind == FileKind.Plant) return _plant.Write($"{folder}/plant.yaml", text);
        if (header.Id == Odd) return _plant.Write($"{folder}/odd.yaml", FirstOdd().Replace(text, $": {folder}", 1));
        _plant.PlantWithout(header, folder);
        return _plant.Write($"{folder}/odd.yaml", text);
    }

    [GeneratedRegex(": " + Odd)]
    private static partial Regex FirstOdd();
}
