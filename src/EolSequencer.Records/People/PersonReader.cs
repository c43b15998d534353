using System.Collections.Immutable;
using EolSequencer.Records.Administration;

namespace EolSequencer.Records.People;

/// <summary>Who is known to a record. From any thread.</summary>
public sealed class PersonReader
{
    private readonly IActReader _record;

    internal PersonReader(IActReader record) => _record = record;

    /// <summary>Everybody, by badge; empty before the first administrator was made.</summary>
    public ImmutableArray<Person> List() => _record.Read(view => view.People.All().Select(Person.Of).ToImmutableArray());
}
