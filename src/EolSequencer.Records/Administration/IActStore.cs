using System.Collections.Immutable;
using EolSequencer.Model.Events;
using EolSequencer.Model.Sequences;
using EolSequencer.Model.Vehicles;
using EolSequencer.Records.History;
using EolSequencer.Records.Parts;
using EolSequencer.Records.Reading;

namespace EolSequencer.Records.Administration;

/// <summary>What the services that only look need of a record, whatever database it is in.</summary>
/// <remarks>Trouble with the record itself is a <see cref="RecordFault"/>.</remarks>
internal interface IActReader
{
    /// <summary>Reads as of one moment.</summary>
    T Read<T>(Func<IActView, T> read);
}

/// <summary>Where acts are kept: what the services that act need of a record.</summary>
internal interface IActStore : IActReader
{
    /// <summary>
    /// Decides and acts in one turn, in which nobody else writes: what was read still holds when the acts are kept. All acts of the
    /// turn are kept; none of them when it ends refused.
    /// </summary>
    Outcome<T> Change<T>(Func<IActTurn, Outcome<T>> decide)
        where T : class;
}

/// <summary>A record as it is at one moment.</summary>
internal interface IActView : IActTables
{
    /// <summary>The salted hash of a person's PIN or password; null when none is kept.</summary>
    string? SecretHash(string badge);

    /// <summary>The text of a file that is kept under this hash; null when none is.</summary>
    string? SourceText(string hash);

    /// <summary>What speaks for and against a vehicle in the runs that count, by station kind.</summary>
    /// <param name="vins">All its numbers.</param>
    ImmutableArray<KindProgress> Progress(IReadOnlyList<string> vins);

    /// <summary>The numbers of vehicles that have a run that counts and are not released, in the order of their first runs.</summary>
    IReadOnlyList<string> NumbersNotReleased();

    /// <summary>The parts of a vehicle that are elsewhere too, each with where.</summary>
    /// <param name="vins">All its numbers.</param>
    IEnumerable<(PartSerial Here, PartSerial There)> SharedParts(IReadOnlyList<string> vins);

    /// <summary>The vehicles that a part with this serial is on by now.</summary>
    IReadOnlyList<string> VehiclesWith(PartName part, string serial);

    /// <summary>The first events of runs, newest first; only what stands in the events themselves, not the texts of files.</summary>
    IEnumerable<RunBegun> RunsBegun(RunFilter filter);
}

/// <summary>A turn of one writer.</summary>
internal interface IActTurn : IActView
{
    /// <summary>The moment of the turn.</summary>
    DateTimeOffset Now { get; }

    /// <summary>Appends an act to the ledger and folds it into the tables.</summary>
    /// <param name="by">Badge of the person; null: the program itself.</param>
    void Append(Act act, string? by);

    /// <summary>Keeps the text of a file, beside the ledger; an act names its hash.</summary>
    void KeepSource(SourceCopy source);

    /// <summary>Keeps the salted hash of a person's PIN or password, beside the ledger.</summary>
    void KeepSecretHash(string badge, string hash);
}
