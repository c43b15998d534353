using EolSequencer.Model.Events;
using EolSequencer.Model.Judging;
using EolSequencer.Records.Sqlite;

namespace EolSequencer.Records.Writing;

/// <summary>Writes the criteria of steps that have more than one.</summary>
internal sealed class CriterionTable(RecordConnection connection)
{
    private readonly Statement _add = connection.Prepare(
        """
        INSERT INTO criterion (id, k, of, verdict, record_only, value, value_text, unit, low, high)
        VALUES (?, ?, ?, ?, ?, ?, ?, ?, ?, ?)
        """);

    public void Add(long key, Judged judged)
    {
        if (judged.Criteria is { IsDefaultOrEmpty: true } or [_]) return;
        for (var k = 0; k < judged.Criteria.Length; k++)
        {
            var criterion = judged.Criteria[k];
            _add.Int(1, key).Int(2, k).Text(3, criterion.Of).Text(4, criterion.Verdict.Word()).Int(5, criterion.RecordOnly ? 1 : 0)
                .Real(6, StepRow.ValueOf(criterion)).Text(7, criterion.Value).Text(8, criterion.Unit)
                .Real(9, StepRow.NumberOf(criterion.Low)).Real(10, StepRow.NumberOf(criterion.High))
                .Run();
        }
    }
}
