using EolSequencer.Model.Events;
using EolSequencer.Model.Judging;
using EolSequencer.Records.Sqlite;

namespace EolSequencer.Records.Writing;

/// <summary>Writes step results, and their criteria where there is more than one.</summary>
internal sealed class StepTable(RecordConnection connection)
{
    private readonly Statement _step = connection.Prepare(
        """
        INSERT INTO step (id, step, attempt, measured, counted, cause, value, value_text, unit, low, high, took_us)
        VALUES (?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?)
        """);

    private readonly Statement _criterion = connection.Prepare(
        """
        INSERT INTO criterion (id, k, of, verdict, record_only, value, value_text, unit, low, high)
        VALUES (?, ?, ?, ?, ?, ?, ?, ?, ?, ?)
        """);

    public void Add(long key, Judged judged)
    {
        var row = StepRow.Of(judged);
        _step.Int(1, key).Text(2, row.Step).Int(3, row.Attempt)
            .Text(4, row.Measured.Word()).Text(5, row.Counted.Word()).Text(6, row.Cause?.Word())
            .Real(7, row.Value).Text(8, row.ValueText).Text(9, row.Unit)
            .Real(10, row.Low).Real(11, row.High).Int(12, row.Took)
            .Run();
        if (judged.Criteria is { IsDefaultOrEmpty: false, Length: > 1 }) AddCriteria(key, judged);
    }

    private void AddCriteria(long key, Judged judged)
    {
        for (var k = 0; k < judged.Criteria.Length; k++)
        {
            var criterion = judged.Criteria[k];
            _criterion.Int(1, key).Int(2, k).Text(3, criterion.Of).Text(4, criterion.Verdict.Word()).Int(5, criterion.RecordOnly ? 1 : 0)
                .Real(6, StepRow.NumberOf(criterion.Value)).Text(7, criterion.Value).Text(8, criterion.Unit)
                .Real(9, StepRow.NumberOf(criterion.Low)).Real(10, StepRow.NumberOf(criterion.High))
                .Run();
        }
    }
}
