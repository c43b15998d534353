using EolSequencer.Model.Events;
using EolSequencer.Model.Ports;

namespace EolSequencer.Engine.Running;

/// <summary>Numbers and stamps the events of one run and hands them to the journal, which keeps them before it returns.</summary>
/// <param name="number">Number of the last event; 0 when none came before.</param>
/// <param name="at">Microseconds since the run began that it is now.</param>
internal sealed class EventLog(IRunJournal journal, TimeProvider time, int number = 0, long at = 0)
{
    private readonly long _begun = time.GetTimestamp();
    private int _number = number;

    /// <summary>Microseconds from the beginning of the run to a timestamp.</summary>
    public long MicrosecondsAt(long stamp) => at + (long)time.GetElapsedTime(_begun, stamp).TotalMicroseconds;

    /// <summary>Appends the event that the number and the present moment complete.</summary>
    public void Append(Func<int, long, RunEvent> make) =>
        journal.Append(make(++_number, MicrosecondsAt(time.GetTimestamp())));
}
