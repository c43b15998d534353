using System.Collections.Immutable;
using System.Globalization;
using EolSequencer.Model.Events;
using EolSequencer.Model.Judging;
using EolSequencer.Model.Ports;

namespace EolSequencer.Rehearsal.Campaigns;

/// <summary>Keeps of a run what a campaign asks for.</summary>
internal sealed class CampaignJournal(CampaignJob job) : IRunJournal
{
    private readonly Dictionary<string, Deviation> _worse = new(StringComparer.Ordinal);
    private readonly Dictionary<string, JudgedNumber> _numbers = new(StringComparer.Ordinal);
    private RunEnded? _ended;
    private Asked? _open;
    private int _judged;

    public void Append(RunEvent next)
    {
        switch (next)
        {
            case Judged judged: Take(judged); break;
            case Asked asked: _open = asked; break;
            case RunEnded ended: End(ended); break;
        }
    }

    public CampaignResult Result(ImmutableArray<string> faults) => _ended is { } ended
        ? new CampaignResult(job, ended.RollUp.Verdict, ended.RollUp.Releases, _judged, ended.At, [.. _worse.Values.OrderBy(one => one.At)], [.. _numbers.Values], null)
        : new CampaignResult(job, Verdict.Error, false, 0, 0, [], [], faults.IsEmpty ? "the run did not end" : string.Join("; ", faults));

    // A run that had to be stopped waited for the last thing that was asked.
    private void End(RunEnded ended)
    {
        _ended = ended;
        if (ended.Interrupted && _open is { } asked) _worse.TryAdd(asked.Step, new Deviation(asked.Step, Verdict.Inconclusive, ended.At));
    }

    private void Take(Judged judged)
    {
        if (_open?.Step == judged.Step) _open = null;
        if (judged.Measured != Verdict.None) _judged++;
        if (judged.Counted > Verdict.Pass) _worse[judged.Step] = new Deviation(judged.Step, judged.Counted, judged.At);
        else _worse.Remove(judged.Step);
        if (!job.Faults.IsEmpty) return;
        foreach (var criterion in judged.Criteria)
        {
            if (criterion.IsText || Number(criterion.Value) is not { } value) continue;
            var (low, high) = (Number(criterion.Low), Number(criterion.High));
            if (low is null && high is null) continue;
            var name = criterion.Of.Length == 0 ? judged.Step : $"{judged.Step} {criterion.Of}";
            _numbers[name] = new JudgedNumber(name, value, low, high);
        }
    }

    private static double? Number(string? text) =>
        double.TryParse(text, NumberStyles.Float, CultureInfo.InvariantCulture, out var number) ? number : null;
}
