using System.Collections.Immutable;
using EolSequencer.Model.Events;
using EolSequencer.Model.Ports;
using EolSequencer.Records.Reading;
using EolSequencer.Rehearsal.Operators;
using EolSequencer.Rehearsal.Simulated;
using EolSequencer.Simulators.Faults;
using EolSequencer.Station.Identifying;

namespace EolSequencer.Cli.Commands;

/// <summary>One run of <c>eol run</c>, whatever clock it runs by.</summary>
internal sealed record OneRun
{
    public required IdentifiedVehicle Vehicle { get; init; }

    /// <summary>Id, given by the record.</summary>
    public required string Run { get; init; }
    public required IRunJournal Journal { get; init; }

    /// <summary>Told what devices find that whoever looks after the station should know.</summary>
    public required Action<string> Note { get; init; }

    /// <summary>Knows the parts of other vehicles, for runs that count.</summary>
    public required IPartSerials Serials { get; init; }

    /// <summary>The runs in the record.</summary>
    public required RunReader Runs { get; init; }
    public required ulong Seed { get; init; }
    public ImmutableArray<InjectedFault> Faults { get; init; } = [];
    public ImmutableArray<string> Only { get; init; } = [];
    public OperatorScript? Script { get; init; }

    /// <summary>The run that is repeated where it did not pass; null: none.</summary>
    public string? RetestOf { get; init; }

    /// <summary>The events of a run that broke off and is taken up; empty: it begins.</summary>
    public ImmutableArray<RunEvent> Past { get; init; } = [];

    /// <summary>The same in virtual time.</summary>
    public VirtualRunRequest Virtual() => new()
    {
        Run = Run,
        Sequence = Vehicle.Sequence,
        Plant = Vehicle.Plant,
        Station = Vehicle.Station,
        Order = Vehicle.Order,
        Journal = Journal,
        Start = TimeProvider.System.GetUtcNow(),
        Seed = Seed,
        Faults = Faults,
        Only = Only,
        RetestOf = RetestOf,
        Past = Past,
        Note = Note,
        Operator = Script is { } script ? (inner, time) => new ScriptedOperator(script, inner, time) : null,
    };
}
