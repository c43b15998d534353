using EolSequencer.Engine.Planning;
using EolSequencer.Engine.Running;

namespace EolSequencer.Engine.Capturing;

/// <summary>Keeps the captured channels of one attempt of a group, from its first step to the end of its last.</summary>
internal sealed class GroupCapture : IDisposable
{
    private readonly RunServices _run;
    private readonly string _group;
    private readonly long _begun;
    private readonly List<ChannelRecorder> _recorders;

    private GroupCapture(RunServices run, PlannedNode group)
    {
        (_run, _group, _begun) = (run, group.Id, run.Now);
        _recorders = [.. group.Captures.Select(capture => new ChannelRecorder(run, capture, _begun))];
    }

    /// <summary>Begins to listen; null when the group captures nothing.</summary>
    public static GroupCapture? Begin(RunServices run, PlannedNode group) => group.Captures.IsEmpty ? null : new GroupCapture(run, group);

    /// <summary>Ends the traces, writes them down and lets later expressions see them.</summary>
    /// <param name="cut">Why the group was cut short; null when it came to its end.</param>
    public void End(string? cut)
    {
        var end = _run.Now;
        var from = _run.Log.MicrosecondsAt(_begun);
        foreach (var recorder in _recorders)
        {
            var (trace, points) = recorder.End(end, cut);
            var lost = trace.Gaps is [var gap, ..] ? gap.Cause : null;
            _run.Log.Append((n, at) => new Model.Events.SeriesRecorded
            {
                N = n,
                At = at,
                Step = _group,
                Channel = trace.Channel,
                Points = points,
                Capture = new Model.Events.CaptureSpan(from, trace.Length, lost),
            });
            _run.Results.NoteTrace(_group, trace);
        }
    }

    public void Dispose()
    {
        foreach (var recorder in _recorders) recorder.Dispose();
    }
}
