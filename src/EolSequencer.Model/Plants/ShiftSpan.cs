namespace EolSequencer.Model.Plants;

/// <summary>One shift of one day, or a production day as a whole.</summary>
/// <param name="Shift">Name of the shift; null: the whole day.</param>
/// <param name="From">Its first moment.</param>
/// <param name="Until">The first moment after it.</param>
/// <param name="Day">The production day that it belongs to: the one in which it begins.</param>
public sealed record ShiftSpan(string? Shift, DateTimeOffset From, DateTimeOffset Until, DateOnly Day)
{
    public bool Holds(DateTimeOffset moment) => From <= moment && moment < Until;
}
