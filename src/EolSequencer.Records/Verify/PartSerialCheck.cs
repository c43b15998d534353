using EolSequencer.Model.Events;
using EolSequencer.Records.Canonical;
using EolSequencer.Records.Parts;
using EolSequencer.Records.Sqlite;
using EolSequencer.Records.Writing;

namespace EolSequencer.Records.Verify;

/// <summary>Compares the serials of parts that are kept of a run with its events.</summary>
internal sealed class PartSerialCheck(RecordConnection connection, FindingList findings)
{
    private readonly Statement _rows = connection.Prepare("SELECT id, mode, vin, part, at, serial FROM part_serial WHERE id BETWEEN ? AND ? ORDER BY id");
    private readonly List<(long Key, int N, PartSerialRow Row)> _due = [];
    private (RunMode Mode, string Vin) _run;

    public void Begin() => _due.Clear();

    /// <summary>Notes what an event says of a part.</summary>
    public void Note(RunEvent found, long key)
    {
        if (found is RunBegun begun) _run = (begun.Mode, begun.Order.Vin.Text);
        if (found is Judged judged && PartSerialRow.Of(_run.Mode, _run.Vin, judged) is { } row) _due.Add((key, found.N, row));
    }

    /// <summary>Compares the rows of the run.</summary>
    public void End(string run, long row)
    {
        _rows.Int(1, EventKey.Before(row)).Int(2, EventKey.Last(row));
        var due = new Queue<(long Key, int N, PartSerialRow Row)>(_due);
        while (_rows.Next())
        {
            var key = _rows.Int(0);
            while (due.TryPeek(out var before) && before.Key < key) Missing(run, due.Dequeue());
            if (!due.TryPeek(out var next) || next.Key != key)
            {
                findings.Add(FindingKind.Table, "a row of the table part_serial comes from no event that names a part", run, EventKey.NumberOf(key));
                continue;
            }

            due.Dequeue();
            var check = new RowCheck(_rows, 1).Text("mode", next.Row.Mode).Text("vin", next.Row.Vin).Text("part", next.Row.Part).Text("at", next.Row.At).Text("serial", next.Row.Serial);
            if (check.Differences is { } differences) findings.Add(FindingKind.Table, $"its row in the table part_serial: {differences}", run, next.N);
        }

        while (due.TryDequeue(out var left)) Missing(run, left);
    }

    private void Missing(string run, (long Key, int N, PartSerialRow Row) due) =>
        findings.Add(FindingKind.Table, $"serial '{due.Row.Serial}' of part {due.Row.Part} is missing from the table part_serial", run, due.N);
}
