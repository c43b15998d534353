using EolSequencer.Model.Values;

namespace EolSequencer.Language.Expectations;

/// <summary>What an expectation judges.</summary>
/// <param name="Name">How messages name it: <c>meter.lamp_current</c>, <c>the time taken</c>.</param>
/// <param name="MayBeInexact">True when its numbers come through binary floating point, so that none may be compared with <c>equals</c>.</param>
internal sealed record JudgedValue(string Name, ValueShape Shape, bool MayBeInexact = false);
