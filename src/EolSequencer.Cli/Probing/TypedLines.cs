using EolSequencer.Station.Time;

namespace EolSequencer.Cli.Probing;

/// <summary>The lines that somebody types, or that a pipe hands over; behind the last one everything is answered by null.</summary>
/// <param name="loop">The loop of a session in real time; null in virtual time.</param>
/// <param name="isTyped">True when a person types them one after the other; those of a pipe are all there at once.</param>
internal sealed class TypedLines(StationLoop? loop, bool isTyped)
{
    private readonly Mailbox<string?> _lines = new(loop);
    private bool _isOver;

    public bool IsTyped => isTyped;

    /// <summary>Called on the session's thread when a line has come; real time only.</summary>
    public Action? Arrived
    {
        set => _lines.Arrived = value;
    }

    /// <summary>Reads on a thread of its own, so that a line can be typed while the vehicle goes on.</summary>
    public void ReadFrom(TextReader input)
    {
        var thread = new Thread(() =>
        {
            while (input.ReadLine() is { } line) _lines.Post(line);
            _lines.Post(null);
        })
        { IsBackground = true, Name = "typed lines" };
        thread.Start();
    }

    /// <summary>The next line; null: there is none any more.</summary>
    public async ValueTask<string?> NextAsync(CancellationToken cancel)
    {
        if (_isOver) return null;
        var line = await _lines.TakeAsync(cancel);
        _isOver = line is null;
        return line;
    }
}
