using EolSequencer.Model.Events;
using EolSequencer.Model.Ports;

namespace EolSequencer.Station.Running;

/// <summary>Shows an event only after it has been kept.</summary>
public sealed class ShowingJournal(IRunJournal kept, Action<RunEvent> show) : IRunJournal
{
    public void Append(RunEvent next)
    {
        kept.Append(next);
        show(next);
    }
}
