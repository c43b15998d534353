namespace EolSequencer.Devices.Diagnostics;

/// <summary>How long the client waits for a control unit, and how often it asks again.</summary>
public sealed record DiagnosticTiming
{
    /// <summary>
    /// P2 of the client: from the confirmation of the request to the first frame of the answer. 50 ms of the server
    /// (ISO 15765-3, default session) and as much for the way there and back.
    /// </summary>
    public TimeSpan P2 { get; init; } = TimeSpan.FromMilliseconds(100);

    /// <summary>P2* of the client: the same after "response pending"; 5000 ms of the server and 50 ms for the way.</summary>
    public TimeSpan P2Star { get; init; } = TimeSpan.FromMilliseconds(5050);

    /// <summary>
    /// Whether the times that a control unit states when it changes its session replace <see cref="P2"/> and
    /// <see cref="P2Star"/> for it (ISO 14229-1, service 10). False: the station's times hold whatever a unit says.
    /// </summary>
    public bool TakesStatedTimes { get; init; } = true;

    /// <summary>What is added to the times a control unit states for its session.</summary>
    public TimeSpan Way { get; init; } = TimeSpan.FromMilliseconds(50);

    /// <summary>The most "response pending" for one request, and the most strays that may hold its answer up.</summary>
    public int MostPending { get; init; } = 60;

    /// <summary>The most times a request is sent when the answer is "busy, repeat request".</summary>
    public int MostTries { get; init; } = 5;

    /// <summary>Time before a request is sent again.</summary>
    public TimeSpan BusyPause { get; init; } = TimeSpan.FromMilliseconds(100);

    /// <summary>How often a session is kept alive; shorter than S3 of the server, 5000 ms.</summary>
    public TimeSpan KeepAlive { get; init; } = TimeSpan.FromMilliseconds(2000);
}
