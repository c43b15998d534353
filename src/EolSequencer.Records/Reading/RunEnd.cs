using EolSequencer.Model.Judging;

namespace EolSequencer.Records.Reading;

/// <summary>How a run ended.</summary>
/// <param name="At">Wall time, UTC.</param>
/// <param name="Took">By the monotonic clock.</param>
/// <param name="IsInterrupted">True when it did not come to its end by itself.</param>
/// <param name="Numbers">Worst counted verdict and the numbers of each.</param>
public sealed record RunEnd(DateTimeOffset At, TimeSpan Took, bool IsInterrupted, RollUp Numbers);
