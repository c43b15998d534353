namespace EolSequencer.Records.Release;

/// <summary>Something that keeps a vehicle from being released.</summary>
/// <param name="Kind"><c>number</c>, <c>route</c>, <c>run</c>, <c>step</c>, <c>order</c>, <c>part</c>, <c>nonconformity</c> or <c>hold</c>.</param>
/// <param name="Text">What it is, for people.</param>
/// <param name="Who">Role of who can act next: <c>operator</c>, <c>repairer</c> or <c>quality</c>.</param>
/// <param name="Next">What they can do.</param>
public sealed record Obstacle(string Kind, string Text, string Who, string Next);
