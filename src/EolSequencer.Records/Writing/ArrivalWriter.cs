using EolSequencer.Model.Events;
using EolSequencer.Model.Ports;
using EolSequencer.Records.History;
using EolSequencer.Records.Sqlite;

namespace EolSequencer.Records.Writing;

/// <summary>Writes what the beginning of a run that counts says of its vehicle, in the transaction of its first event.</summary>
internal sealed class ArrivalWriter(RecordConnection connection, LedgerWriter ledger, SealingKey key)
{
    private readonly ActWriter _acts = new(ledger, key);
    private SqliteTables? _tables;

    /// <summary>Looks at a run that has begun, and at what came before it.</summary>
    /// <exception cref="JournalFault">What is kept of the vehicle cannot be read.</exception>
    public void Write(RunBegun begun)
    {
        if (begun.Mode != RunMode.Production) return;
        try
        {
            WriteActs(begun, _tables ??= new SqliteTables(connection));
        }
        catch (FormatException fault)
        {
            throw new JournalFault($"cannot tell what run {begun.Run} says about its vehicle: {fault.Message}; run verify", fault);
        }
    }

    private void WriteActs(RunBegun begun, SqliteTables tables)
    {
        var vin = begun.Order.Vin.Text;
        var arrival = VehicleArrival.Of(tables, begun.Order, begun.Run);
        if (arrival.IsReleased) _acts.Append(new VehicleReturned(vin, begun.Run), begun.Person, begun.Wall, tables);

        // A retest has the order of the run that it repeats, whatever became of the order since.
        if (begun.RetestOf is null && arrival is { Before: { } before, Changed: [_, ..] changed }) _acts.Append(new OrderChanged(vin, begun.Run, before, changed), begun.Person, begun.Wall, tables);
    }
}
