using System.Collections.Immutable;
using System.Globalization;
using EolSequencer.Model.Vehicles;
using EolSequencer.Simulators.Bus;
using EolSequencer.Wire.Can;

namespace EolSequencer.Cli.Probing;

/// <summary>The newest frames of the bus and the messages they make; older ones are dropped.</summary>
internal sealed class FrameLog(ImmutableArray<ControlUnit> units, TimeProvider time, ProbeScreen screen) : IBusObserver
{
    /// <summary>How many are kept of each.</summary>
    public const int Kept = 2000;

    private readonly Queue<string> _frames = new();
    private readonly Queue<string> _messages = new();
    private readonly MessageListener _listener = new(units);
    private readonly long _begun = time.GetTimestamp();

    /// <summary>True: each message is shown as soon as it is whole.</summary>
    public bool ShowsMessages { get; set; }

    public void Carried(in CanFrame frame, long stamp)
    {
        var at = string.Create(CultureInfo.InvariantCulture, $"{time.GetElapsedTime(_begun, stamp).TotalSeconds,10:0.0000} s");
        Keep(_frames, $"{at}  {frame.Id}  {HexText.Of(frame.Data.Span)}");
        if (_listener.Heard(frame) is not { } message) return;
        Keep(_messages, $"{at}  {message}");
        if (ShowsMessages) screen.Write($"{at}  {message}");
    }

    /// <summary>The newest frames, oldest first.</summary>
    public IEnumerable<string> Frames(int most) => _frames.Skip(_frames.Count - most);

    /// <summary>The newest requests and answers, oldest first.</summary>
    public IEnumerable<string> Messages(int most) => _messages.Skip(_messages.Count - most);

    private static void Keep(Queue<string> lines, string line)
    {
        lines.Enqueue(line);
        if (lines.Count > Kept) lines.Dequeue();
    }
}
