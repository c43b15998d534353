namespace EolSequencer.Model.Ports;

/// <summary>What a person answered, and who it was.</summary>
public abstract record Answer
{
    private Answer() { }

    /// <summary>The person's id; null when the station has one operator without a log-in.</summary>
    public string? Person { get; init; }

    /// <summary>Done, or a caution acknowledged.</summary>
    public sealed record Confirmed : Answer;

    /// <summary>In order.</summary>
    public sealed record Ok : Answer;

    /// <summary>Not in order.</summary>
    /// <param name="Where">Where on the vehicle; null when not said.</param>
    public sealed record NotOk(string? Where) : Answer;

    /// <summary>Typed, scanned or chosen.</summary>
    public sealed record Text(string Value) : Answer;

    /// <summary>Passed over by a person with that right.</summary>
    public sealed record PassedOver(string Reason) : Answer;

    /// <summary>The run is to stop.</summary>
    public sealed record Stop(string Reason) : Answer;

    /// <summary>The step is to be done again (answer to <see cref="PromptKind.Decide"/>).</summary>
    public sealed record Again : Answer;

    /// <summary>The run is to go on (answer to <see cref="PromptKind.Decide"/>).</summary>
    public sealed record GoOn : Answer;
}
