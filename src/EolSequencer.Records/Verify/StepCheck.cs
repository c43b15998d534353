using EolSequencer.Model.Events;
using EolSequencer.Model.Judging;
using EolSequencer.Records.Sqlite;
using EolSequencer.Records.Writing;

namespace EolSequencer.Records.Verify;

/// <summary>Compares what is read of step results with the events they were made from.</summary>
internal sealed class StepCheck(RecordConnection connection, FindingList findings)
{
    /// <summary>The columns of the table <c>event</c> that it compares, in its order.</summary>
    public const string Columns = "step, attempt, measured, counted, cause, value, value_text, unit, low, high, took_us";

    private readonly Statement _criteria = connection.Prepare(
        "SELECT k, of, verdict, record_only, value, value_text, unit, low, high FROM criterion WHERE id = ? ORDER BY k");

    private readonly Statement _allCriteria = connection.Prepare("SELECT count(*) FROM criterion WHERE id BETWEEN ? AND ?");
    private int _criteriaDue;

    public void Begin() => _criteriaDue = 0;

    /// <summary>Compares an event with its row.</summary>
    /// <param name="row">Stands on the row.</param>
    /// <param name="column">Where <see cref="Columns"/> begin in it.</param>
    public void Check(string run, RunEvent found, Statement row, int column)
    {
        var judged = found as Judged;
        var step = judged is null ? default : StepRow.Of(judged);
        var check = new RowCheck(row, column)
            .Text("step", step.Step).Int("attempt", judged?.Attempt)
            .Text("measured", judged?.Measured.Word()).Text("counted", judged?.Counted.Word()).Text("cause", step.Cause?.Word())
            .Real("value", step.Value).Text("value_text", step.ValueText).Text("unit", step.Unit)
            .Real("low", step.Low).Real("high", step.High).Int("took_us", judged?.Took);
        if (check.Differences is { } differences) findings.Add(FindingKind.Table, $"its columns: {differences}", run, found.N);
        if (judged is { Criteria.Length: > 1 }) CheckCriteria(run, row.Int(0), judged);
    }

    /// <summary>No criterion may stand in the table beyond those the events gave.</summary>
    public void End(string run, long row)
    {
        _allCriteria.Int(1, EventKey.Before(row)).Int(2, EventKey.Last(row)).Next();
        var found = _allCriteria.Int(0);
        _allCriteria.Reset();
        if (found > _criteriaDue) findings.Add(FindingKind.Table, $"it has {found} criteria, its events give {_criteriaDue}", run);
    }

    private void CheckCriteria(string run, long key, Judged judged)
    {
        _criteriaDue += judged.Criteria.Length;
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
                .Real("value", StepRow.ValueOf(criterion)).Text("value_text", criterion.Value).Text("unit", criterion.Unit)
                .Real("low", StepRow.NumberOf(criterion.Low)).Real("high", StepRow.NumberOf(criterion.High));
            if (check.Differences is { } differences) findings.Add(FindingKind.Table, $"criterion {k + 1} of step {judged.Step} in the table criterion: {differences}", run, judged.N);
        }

        _criteria.Reset();
    }
}
