namespace EolSequencer.Engine.Running;

/// <summary>How a run goes on after a node.</summary>
internal enum Flow
{
    /// <summary>With the next node.</summary>
    GoOn,

    /// <summary>The rest is not reached; <c>always</c> follows.</summary>
    Stop,
}
