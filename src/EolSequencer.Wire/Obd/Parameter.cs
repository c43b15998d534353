using System.Collections.Immutable;

namespace EolSequencer.Wire.Obd;

/// <summary>A parameter of services 01 and 02: how many bytes it has and which values lie in them.</summary>
/// <param name="Id">Its number.</param>
/// <param name="Length">Its data bytes.</param>
/// <param name="Values">One or more values, in the order of the bytes; none for bit fields with a codec of their own.</param>
public sealed record Parameter(byte Id, int Length, ImmutableArray<ParameterValue> Values);
