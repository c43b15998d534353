using EolSequencer.Model.Events;
using EolSequencer.Model.Judging;
using EolSequencer.Records.Sqlite;

namespace EolSequencer.Records.Writing;

/// <summary>Writes events as the bytes that were hashed, each with its link, and with what is read of a step result.</summary>
internal sealed class EventTable(RecordConnection connection)
{
    private readonly Statement _add = connection.Prepare("INSERT INTO event (id, hash, bytes) VALUES (?, ?, ?)");

    private readonly Statement _addStep = connection.Prepare(
        """
        INSERT INTO event (id, hash, bytes, step, attempt, measured, counted, cause, value, value_text, unit, low, high, took_us)
        VALUES (?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?)
        """);

    private readonly Statement _last = connection.Prepare("SELECT id, hash FROM event WHERE id BETWEEN ? AND ? ORDER BY id DESC LIMIT 1");

    public void Add(long key, ReadOnlySpan<byte> hash, ReadOnlySpan<byte> bytes) => _add.Int(1, key).Blob(2, hash).Blob(3, bytes).Run();

    public void Add(long key, ReadOnlySpan<byte> hash, ReadOnlySpan<byte> bytes, Judged judged)
    {
        var row = StepRow.Of(judged);
        _addStep.Int(1, key).Blob(2, hash).Blob(3, bytes)
            .Text(4, row.Step).Int(5, row.Attempt)
            .Text(6, row.Measured.Word()).Text(7, row.Counted.Word()).Text(8, row.Cause?.Word())
            .Real(9, row.Value).Text(10, row.ValueText).Text(11, row.Unit)
            .Real(12, row.Low).Real(13, row.High).Int(14, row.Took)
            .Run();
    }

    /// <summary>Number and link of a run's last event; a run has one at least.</summary>
    public (int N, byte[] Link) Last(long run)
    {
        _last.Int(1, EventKey.Before(run)).Int(2, EventKey.Last(run)).Next();
        var last = (EventKey.NumberOf(_last.Int(0)), _last.Blob(1).ToArray());
        _last.Reset();
        return last;
    }
}
