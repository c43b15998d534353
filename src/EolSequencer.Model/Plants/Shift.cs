namespace EolSequencer.Model.Plants;

/// <summary>A shift by local wall time.</summary>
/// <param name="From">Its first moment.</param>
/// <param name="To">The first moment after it; earlier than or equal to <paramref name="From"/> when it ends on the next day.</param>
public sealed record Shift(string Name, TimeOnly From, TimeOnly To);
