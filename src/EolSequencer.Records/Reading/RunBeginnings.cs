using Dapper;
using EolSequencer.Model.Events;
using EolSequencer.Records.Canonical;
using EolSequencer.Records.Sqlite;
using EolSequencer.Records.Writing;

namespace EolSequencer.Records.Reading;

/// <summary>Reads the first events of runs.</summary>
internal static class RunBeginnings
{
    /// <param name="vins">The numbers of the vehicle asked for; empty: the one of the filter, if any.</param>
    public static IEnumerable<RunBegun> Of(RecordConnection connection, RunFilter filter, IReadOnlyList<string> vins)
    {
        using var first = new Statement(connection.Connection.Handle!, "SELECT bytes FROM event WHERE id = ?");
        var (where, values) = RunWhere.Of(filter, vins);
        foreach (var row in connection.Connection.Query<long>($"SELECT id FROM run {where} ORDER BY id DESC LIMIT @Most", values))
        {
            if (!first.Int(1, EventKey.Of(row, 1)).Next()) throw new FormatException($"run row {row} has no first event");
            var bytes = first.Blob(0).ToArray();
            first.Reset();
            yield return (RunBegun)EventForm.Read(bytes, NoAttachments.Only);
        }
    }
}
