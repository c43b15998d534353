namespace EolSequencer.Simulators.Time;

/// <summary>
/// Where a simulator lets things happen later: a clock that counts from its own start and calls back on one thread, in
/// the order of due moments and, at equal moments, in the order of scheduling.
/// </summary>
public interface ISchedule
{
    /// <summary>Time since the schedule's start.</summary>
    TimeSpan Now { get; }

    /// <summary>Lets something happen; it cannot be taken back, so what no longer matters is ignored when it comes.</summary>
    /// <param name="due">Time since the schedule's start; one that has passed is now.</param>
    /// <param name="target">What happens.</param>
    /// <param name="what">Handed to <see cref="IDue.Due"/>.</param>
    void At(TimeSpan due, IDue target, int what = 0);

    /// <summary>A moment as a timestamp of the clock that everybody outside the simulator reads.</summary>
    long Stamp(TimeSpan moment);

    /// <summary>A timestamp of that clock as a moment of this schedule.</summary>
    TimeSpan Moment(long stamp);
}
