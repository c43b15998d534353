using System.Collections.Immutable;
using EolSequencer.Model.Values;

namespace EolSequencer.Model.Traces;

/// <summary>What a channel showed while a group ran: its readings with the stamps of their reception, and where it is not known.</summary>
/// <param name="Channel">As an author writes it: <c>bus.wheel_speed[fl]</c>.</param>
/// <param name="Shape">Type and unit of its values.</param>
/// <param name="Points">The readings, in order of time.</param>
/// <param name="Gaps">Where it is not known, in order of time; empty when continuity was kept.</param>
/// <param name="Length">How long the capture lasted, in microseconds; it begins at 0.</param>
public sealed record Trace(
    string Channel, ValueShape Shape, ImmutableArray<TracePoint> Points, ImmutableArray<TraceGap> Gaps, long Length);

/// <summary>One reading.</summary>
/// <param name="At">Reception, in whole microseconds since the capture began.</param>
public readonly record struct TracePoint(long At, Value Value);

/// <summary>A stretch in which nobody knows the value.</summary>
/// <param name="From">The last reading before it, or 0; microseconds since the capture began.</param>
/// <param name="To">The first reading behind it, or the end of the capture.</param>
/// <param name="Cause">Why, for people.</param>
public readonly record struct TraceGap(long From, long To, string Cause);
