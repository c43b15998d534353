using EolSequencer.Model.Events;
using EolSequencer.Model.Ports;

namespace EolSequencer.Engine.Running;

/// <summary>
/// Numbers and stamps the events of one run and hands them to the journal, which keeps them before it returns. Between two events it
/// sees whether the wall clock was set.
/// </summary>
/// <param name="number">Number of the last event; 0 when none came before.</param>
/// <param name="at">Microseconds since the run began that it is now.</param>
internal sealed class EventLog(IRunJournal journal, TimeProvider time, int number = 0, long at = 0)
{
    /// <summary>What the wall clock may gain or lose from one event to the next; small corrections are nobody's concern.</summary>
    public static readonly TimeSpan MostDrift = TimeSpan.FromSeconds(2);

    private readonly long _begun = time.GetTimestamp();
    private int _number = number;
    private (long Stamp, DateTimeOffset Wall)? _last;

    /// <summary>Microseconds from the beginning of the run to a timestamp.</summary>
    public long MicrosecondsAt(long stamp) => at + (long)time.GetElapsedTime(_begun, stamp).TotalMicroseconds;

    /// <summary>Appends the event that the number and the present moment complete.</summary>
    public void Append(Func<int, long, RunEvent> make)
    {
        var (stamp, wall) = (time.GetTimestamp(), time.GetUtcNow());
        if (_last is { } last && last.Wall + time.GetElapsedTime(last.Stamp, stamp) is var due && (wall - due).Duration() > MostDrift)
        {
            journal.Append(new ClockSet { N = ++_number, At = MicrosecondsAt(stamp), Before = due, After = wall });
        }

        _last = (stamp, wall);
        journal.Append(make(++_number, MicrosecondsAt(stamp)));
    }
}
