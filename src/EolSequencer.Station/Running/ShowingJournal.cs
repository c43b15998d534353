using EolSequencer.Model.Events;
using EolSequencer.Model.Ports;

namespace EolSequencer.Station.Running;

/// <summary>Shows an event only after it has been kept, to one after the other.</summary>
public sealed class ShowingJournal(IRunJournal kept, params Action<RunEvent>[] listeners) : IRunJournal
{
    public void Append(RunEvent next)
    {
        kept.Append(next);
        foreach (var show in listeners) show(next);
    }
}
