using EolSequencer.Model.Events;
using EolSequencer.Model.Ports;

namespace EolSequencer.Engine.Running;

/// <summary>
/// Stops the run at the first event that could not be kept. What follows (leaving the vehicle safe) is done without a
/// record; the run ends as an error.
/// </summary>
internal sealed class FaultKeepingJournal(IRunJournal journal, Action<string> broken) : IRunJournal
{
    /// <summary>The first fault; null while all is well.</summary>
    public string? Fault { get; private set; }

    public void Append(RunEvent next)
    {
        if (Fault is not null) return;
        try
        {
            journal.Append(next);
        }
        catch (JournalFault fault)
        {
            Fault = fault.Message;
            broken(fault.Message);
        }
    }
}
