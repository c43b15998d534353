namespace EolSequencer.Model.Expressions;

/// <summary>A captured channel as an expression names it: <c>trace.run_up.rollers.speed</c>.</summary>
/// <param name="Group">The group whose capture it is; its path is followed like that of a result.</param>
/// <param name="Channel">The channel.</param>
public sealed record TraceUse(ResultUse Group, ChannelUse Channel);
