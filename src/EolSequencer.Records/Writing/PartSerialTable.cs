using EolSequencer.Model.Events;
using EolSequencer.Records.Canonical;
using EolSequencer.Records.Parts;
using EolSequencer.Records.Sqlite;

namespace EolSequencer.Records.Writing;

/// <summary>Writes the serials of parts that steps find.</summary>
internal sealed class PartSerialTable(RecordConnection connection)
{
    private readonly Statement _add = connection.Prepare("INSERT INTO part_serial (id, mode, vin, part, at, serial) VALUES (?, ?, ?, ?, ?, ?)");
    private readonly Statement _run = connection.Prepare("SELECT mode, vin FROM run WHERE id = ?");

    /// <summary>Adds what a step result says of a part; nothing when it names none.</summary>
    /// <param name="run">Number of the run's row.</param>
    public void Add(long key, long run, Judged judged)
    {
        if (judged.Part is null) return;
        _run.Int(1, run).Next();
        var found = PartSerialRow.Of(RunBegunForm.ModeOf(_run.Text(0)), _run.Text(1), judged);
        _run.Reset();
        if (found is not { } row) return;
        _add.Int(1, key).Text(2, row.Mode).Text(3, row.Vin).Text(4, row.Part).Text(5, row.At).Text(6, row.Serial).Run();
    }
}
