using System.Collections.Immutable;
using EolSequencer.Model.Source;
using EolSequencer.Model.Texts;

namespace EolSequencer.Model.Plants;

/// <summary>What a station file says: which adapter serves each role, and where its record goes.</summary>
public sealed record StationFile
{
    /// <summary>Unique in the plant.</summary>
    public required string Id { get; init; }

    /// <summary>What people call it.</summary>
    public required LocalText Title { get; init; }

    /// <summary>The station kind whose sequences it runs.</summary>
    public required string StationKind { get; init; }

    /// <summary>Where its id stands, for what there is to say about the station as a whole.</summary>
    public required SourcePlace Place { get; init; }

    /// <summary>Full path of the data folder; one folder for all stations of a computer.</summary>
    public required string DataFolder { get; init; }

    /// <summary>Where it asks for orders that the plant does not have; null: nowhere.</summary>
    public OrderAddress? OrdersFrom { get; init; }

    /// <summary>How it is checked against a reference; null: it is not.</summary>
    public ShiftCheckRule? ShiftCheck { get; init; }

    /// <summary>How codes are scanned; null when they are only typed.</summary>
    public AdapterBinding? Scanner { get; init; }

    /// <summary>The roles in written order.</summary>
    public required ImmutableArray<RoleBinding> Devices { get; init; }

    /// <summary>The binding of a role, or null when the file does not name it.</summary>
    public RoleBinding? Find(string role) => Devices.FirstOrDefault(one => one.Role == role);
}
