using EolSequencer.Model.Judging;
using EolSequencer.Model.Values;

namespace EolSequencer.Model.Expressions;

/// <summary>What later expressions may know of a step that has been judged.</summary>
/// <param name="Value">The value found; null when the step found none (a prompt, a missing reading).</param>
/// <param name="Verdict">The counted verdict.</param>
/// <param name="Took">Time from the step's start to its end.</param>
public sealed record ResultView(Value? Value, Verdict Verdict, TimeSpan Took);
