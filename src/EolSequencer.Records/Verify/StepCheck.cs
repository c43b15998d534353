using EolSequencer.Model.Events;
using EolSequencer.Model.Judging;
using EolSequencer.Records.Sqlite;
using EolSequencer.Records.Writing;

namespace EolSequencer.Records.Verify;

/// <summary>Compares the step results and criteria that are read fast with the events they were made from.</summary>
internal sealed class StepCheck(RecordConnection connection, FindingList findings)
{
    private readonly Statement _step = connection.Prepare(
        "SELECT step, attempt, measured, counted, cause, value, value_text, unit, low, high, took_us FROM step WHERE id = ?");

    private readonly Statement _criteria = connection.Prepare(
        "SELECT k, of, verdict, record_only, value, value_text, unit, low, high FROM criterion WHERE id = ? ORDER BY k");

    private readonly Statement _steps = connection.Prepare("SELECT count(*) FROM step WHERE id BETWEEN ? AND ?");
    private readonly Statement _allCriteria = connection.Prepare("SELECT count(*) FROM criterion WHERE id BETWEEN ? AND ?");
    private int _stepsDue;
    private int _criteriaDue;

    public void Begin() => (_stepsDue, _criteriaDue) = (0, 0);

    public void Check(string run, long key, Judged judged)
    {
        _stepsDue++;
        CheckStep(run, key, judged);
        if (judged.Criteria.Length < 2) return;
        _criteriaDue += judged.Criteria.Length;
        CheckCriteria(run, key, judged);
    }

    /// <summary>Nothing may stand in the tables beyond what the events gave.</summary>
    public void End(string run, long row)
    {
        if (CountOf(_steps, row) is var steps && steps != _stepsDue) findings.Add(FindingKind.Table, $"it has {steps} step results, its events give {_stepsDue}", run);
        if (CountOf(_allCriteria, row) is var criteria && criteria != _criteriaDue) findings.Add(FindingKind.Table, $"it has {criteria} criteria, its events give {_criteriaDue}", run);
    }

    private void CheckStep(string run, long key, Judged judged)
    {
        if (!_step.Int(1, key).Next())
        {
            findings.Add(FindingKind.Table, $"the result of step {judged.Step} is missing from the table step", run, judged.N);
            return;
        }

        var row = StepRow.Of(judged);
        var check = new RowCheck(_step)
            .Text("step", row.Step).Int("attempt", row.Attempt)
            .Text("measured", row.Measured.Word()).Text("counted", row.Counted.Word()).Text("cause", row.Cause?.Word())
            .Real("value", row.Value).Text("value_text", row.ValueText).Text("unit", row.Unit)
            .Real("low", row.Low).Real("high", row.High).Int("took_us", row.Took);
        if (check.Differences is { } differences) findings.Add(FindingKind.Table, $"step {judged.Step} in the table step: {differences}", run, judged.N);
        _step.Reset();
    }

    private void CheckCriteria(string run, long key, Judged judged)
    {
        _criteria.Int(1, key);
        for (var k = 0; k < judged.Criteria.Length; k++)
        {
            if (!_criteria.Next())
            {
                findings.Add(FindingKind.Table, $"criterion {k + 1} of step {judged.Step} is missing from the table criterion", run, judged.N);
                return;
            }

            var criterion = judged.Criteria[k];
            var check = new RowCheck(_criteria)
                .Int("k", k).Text("of", criterion.Of).Text("verdict", criterion.Verdict.Word()).Int("record_only", criterion.RecordOnly ? 1 : 0)
                .Real("value", StepRow.NumberOf(criterion.Value)).Text("value_text", criterion.Value).Text("unit", criterion.Unit)
                .Real("low", StepRow.NumberOf(criterion.Low)).Real("high", StepRow.NumberOf(criterion.High));
            if (check.Differences is { } differences) findings.Add(FindingKind.Table, $"criterion {k + 1} of step {judged.Step} in the table criterion: {differences}", run, judged.N);
        }

        _criteria.Reset();
    }

    private static long CountOf(Statement count, long row)
    {
        count.Int(1, EventKey.Before(row)).Int(2, EventKey.Last(row)).Next();
        var found = count.Int(0);
        count.Reset();
        return found;
    }
}
