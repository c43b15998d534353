using System.Collections.Immutable;
using EolSequencer.Model.Devices;
using EolSequencer.Model.Source;
using EolSequencer.Model.Texts;
using EolSequencer.Model.Values;
using EolSequencer.Model.Vehicles;

namespace EolSequencer.Model.Sequences;

/// <summary>A sequence without a fault: every name is resolved, every window has its unit, every expression is compiled.</summary>
public sealed record CheckedSequence
{
    /// <summary>Unique in the plant.</summary>
    public required string Id { get; init; }

    /// <summary>What people call it.</summary>
    public required LocalText Title { get; init; }

    /// <summary>Counts up with each approved change, from 1.</summary>
    public required int Revision { get; init; }

    /// <summary>The vehicle type it tests.</summary>
    public required VehicleType VehicleType { get; init; }

    /// <summary>The station kind it belongs to.</summary>
    public required string StationKind { get; init; }

    /// <summary>Where its cycle time stands, else its id.</summary>
    public SourcePlace Place { get; init; } = SourcePlace.None;

    /// <summary>What the station may take for one vehicle; null when nothing is planned.</summary>
    public TimeSpan? CycleTime { get; init; }

    /// <summary>The device roles and their kinds.</summary>
    public required ImmutableArray<DeviceRole> Roles { get; init; }

    /// <summary>Values an author may set without touching the steps.</summary>
    public ImmutableArray<SequenceParameter> Parameters { get; init; } = [];

    /// <summary>Station kinds that must be passed before.</summary>
    public ImmutableArray<string> Needs { get; init; } = [];

    /// <summary>What is recorded with every run, in written order.</summary>
    public ImmutableArray<RunCondition> Conditions { get; init; } = [];

    /// <summary>How values of names read on a screen.</summary>
    public ImmutableArray<Words> Words { get; init; } = [];

    /// <summary>Before the first step, and again after every interruption.</summary>
    public ImmutableArray<Node> Prepare { get; init; } = [];

    /// <summary>The steps.</summary>
    public required ImmutableArray<Node> Steps { get; init; }

    /// <summary>Whatever happened.</summary>
    public ImmutableArray<Node> Always { get; init; } = [];

    /// <summary>Sees the verdict and cannot change it.</summary>
    public ImmutableArray<Node> AfterVerdict { get; init; } = [];

    /// <summary>Every file it was made from, with the exact text.</summary>
    public required ImmutableArray<SourceCopy> Sources { get; init; }

    /// <summary>SHA-256 (hex, lower case) of the compiled expressions; empty when there are none.</summary>
    public required string CompiledHash { get; init; }
}

/// <summary>A role a sequence names, and the kind of device it needs.</summary>
public sealed record DeviceRole(string Role, DeviceKind Kind);

/// <summary>A named value with its default.</summary>
public sealed record SequenceParameter(string Name, ValueShape Shape, Value Default);

/// <summary>A file as it was read: plant-relative path, SHA-256 of its bytes (hex, lower case) and its text.</summary>
public sealed record SourceCopy(string Path, string Hash, string Text);
