using EolSequencer.Model.Events;

namespace EolSequencer.Model.Ports;

/// <summary>
/// Where a run's events go. What has been appended is kept: in production mode durably before the call returns, so
/// that nothing is shown that could be lost.
/// </summary>
public interface IRunJournal
{
    /// <summary>Appends the next event of the run.</summary>
    /// <exception cref="JournalFault">It could not be kept (disk full, read only, damaged). The run ends as <c>error</c>.</exception>
    void Append(RunEvent next);
}

/// <summary>An event could not be kept; the message says why, for people.</summary>
public sealed class JournalFault(string message, Exception? cause = null) : Exception(message, cause);
