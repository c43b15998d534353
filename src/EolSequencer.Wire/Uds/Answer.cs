namespace EolSequencer.Wire.Uds;

/// <summary>What a message is to a request.</summary>
/// <param name="Kind">Whether and how it answers.</param>
/// <param name="Code">The negative code; <see cref="NegativeCode.None"/> when there is none.</param>
public readonly record struct Answer(AnswerKind Kind, NegativeCode Code = NegativeCode.None);
