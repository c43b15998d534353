using System.Globalization;
using System.Text.RegularExpressions;
using EolSequencer.Model.Events;
using EolSequencer.Model.Judging;
using EolSequencer.Records.Administration;

namespace EolSequencer.Records.Nonconformities;

/// <summary>What the end of a run that counts says about nonconformities of its vehicle.</summary>
/// <param name="vin">The vehicle.</param>
/// <param name="showsGood">True: what passed in it is shown to be in order, as it is a whole run, or a retest of the newest one.</param>
internal sealed partial class RunFindings(string vin, string stationKind, string run, bool showsGood)
{
    /// <summary>The acts, in the order of the steps.</summary>
    /// <param name="last">What was found last for each step that counts.</param>
    /// <param name="known">The vehicle's nonconformities.</param>
    /// <param name="number">How many nonconformities there are in all.</param>
    public IEnumerable<Act> Acts(IEnumerable<Judged> last, IReadOnlyList<NonconformityRow> known, int number)
    {
        var open = known.Where(row => row is { IsOpen: true, Finding: { } finding } && finding.StationKind == stationKind).ToLookup(row => row.Finding!.Step);
        foreach (var judged in last)
        {
            var found = FindingOf(judged);
            var rows = open[judged.Step].ToList();
            if (judged.Counted == Verdict.Fail && rows.Count == 0) yield return new NonconformityOpened(IdOf(++number), vin, CodeOf(judged), found, PlaceOf(judged), null);
            foreach (var row in rows)
            {
                if (judged.Counted == Verdict.Fail || (judged.Counted == Verdict.Pass && showsGood)) yield return new NonconformityRetested(row.Id, judged.Counted == Verdict.Pass, found);
            }
        }
    }

    public static string IdOf(int number) => string.Create(CultureInfo.InvariantCulture, $"nc-{number:000000}");

    private StepFinding FindingOf(Judged judged)
    {
        var criterion = judged.Criteria.FirstOrDefault(one => one.Verdict == judged.Counted) ?? judged.Criteria.FirstOrDefault();
        return new StepFinding(stationKind, judged.Step, run, judged.N, criterion?.Value, criterion?.Unit, criterion?.Expected, judged.Picture);
    }

    private static string CodeOf(Judged judged) => judged.Nonconformity ?? LoopValues().Replace(judged.Step, "");

    /// <summary>Where a person pointed at; what is told of any other step is no place.</summary>
    private static string? PlaceOf(Judged judged) => judged.Nonconformity is null ? null : judged.Detail;

    [GeneratedRegex(@"\[[^\]]*\]")]
    private static partial Regex LoopValues();
}
