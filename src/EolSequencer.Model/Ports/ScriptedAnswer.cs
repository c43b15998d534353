namespace EolSequencer.Model.Ports;

/// <summary>One answer of an <see cref="OperatorScript"/>.</summary>
/// <param name="Answer">What is answered; null: nothing, for as long as the prompt stands.</param>
/// <param name="After">Time from the prompt's showing to the answer, zero or more.</param>
public sealed record ScriptedAnswer(Answer? Answer, TimeSpan After);
