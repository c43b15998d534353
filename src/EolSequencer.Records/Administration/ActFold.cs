using EolSequencer.Records.People;

namespace EolSequencer.Records.Administration;

/// <summary>What acts come to: the one way from an act to the tables, for writing and for checking.</summary>
internal static class ActFold
{
    public static void Apply(Act act, IActTables tables) => PersonFold.Apply(act, tables.People);
}
