using EolSequencer.Records.People;

namespace EolSequencer.Records.Administration;

/// <summary>Everything that is folded from acts.</summary>
internal interface IActTables
{
    IRows<PersonRow> People { get; }
}
