namespace EolSequencer.Records.Stations;

/// <summary>A station taken by this process, or why it was not.</summary>
public abstract record StationResult
{
    private StationResult() { }

    /// <summary>It is this process's until the hold is disposed or the process ends.</summary>
    public sealed record Taken(StationHold Station) : StationResult;

    /// <summary>It is not.</summary>
    /// <param name="Why">For people; names the process that has it.</param>
    /// <param name="Process">Id of the process that has it; null when it is not known or something else is the matter.</param>
    public sealed record Refused(string Why, int? Process) : StationResult;
}
