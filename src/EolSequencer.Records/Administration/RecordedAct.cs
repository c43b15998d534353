using System.Text.Json;

namespace EolSequencer.Records.Administration;

/// <summary>An act as it stands in the ledger.</summary>
/// <param name="N">Number of its entry.</param>
/// <param name="At">When, UTC.</param>
/// <param name="By">Badge of who acted; null: the program itself.</param>
/// <param name="Act">What kind of act: <c>repair-done</c>.</param>
/// <param name="About">Its fields.</param>
public sealed record RecordedAct(long N, DateTimeOffset At, string? By, string Act, JsonElement About);

/// <summary>Which acts are wanted; what is null is not asked about. Newest first.</summary>
public sealed record ActFilter
{
    /// <summary>Badge of who acted, or signed as the second person.</summary>
    public string? By { get; init; }

    /// <summary>Acts about this vehicle, under all its numbers, and about what was found on it.</summary>
    public string? Vin { get; init; }

    /// <summary>Kind of act, exactly.</summary>
    public string? Act { get; init; }

    /// <summary>Done at this moment or later.</summary>
    public DateTimeOffset? From { get; init; }

    /// <summary>Done before this moment.</summary>
    public DateTimeOffset? Until { get; init; }

    /// <summary>Only entries before this number, to turn to the next page.</summary>
    public long? Before { get; init; }

    /// <summary>At most so many, from 1.</summary>
    public int Most { get; init; } = 100;
}
