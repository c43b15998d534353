using EolSequencer.Model.Events;
using EolSequencer.Model.Ports;

namespace EolSequencer.Engine.Running;

/// <summary>Numbers and stamps the events of one run and hands them to the journal, which keeps them before it returns.</summary>
internal sealed class EventLog(IRunJournal journal, TimeProvider time)
{
    private readonly long _begun = time.GetTimestamp();
    private int _number;

    /// <summary>Microseconds from the beginning of the run to a timestamp.</summary>
    public long MicrosecondsAt(long stamp) => (long)time.GetElapsedTime(_begun, stamp).TotalMicroseconds;

    /// <summary>Appends the event that the number and the present moment complete.</summary>
    public void Append(Func<int, long, RunEvent> make) =>
        journal.Append(make(++_number, MicrosecondsAt(time.GetTimestamp())));
}
