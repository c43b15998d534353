using EolSequencer.Language.Diagnostics;

namespace EolSequencer.Language.Scripts;

/// <summary>What is wrong with an operator script.</summary>
public static class ScriptCodes
{
    public static readonly DiagnosticCode BadAddress = Error("SCR001",
        "An answer for something that can be no step",
        "write the step's id with that of its groups, such as  doors[rear].ajar  or  doors.ajar  for all of its loop values");

    public static readonly DiagnosticCode NoReason = Error("SCR002",
        "An answer without the text that belongs to it", "write the text behind it");

    public static readonly DiagnosticCode WrongPrompt = Error("SCR003",
        "An answer that this prompt does not take",
        "write  ok,  not-ok,  confirm  or  type  for a step,  confirm  for its caution ( STEP! ),  again  or  go-on  for the question after it ( STEP? )");

    public static readonly DiagnosticCode NeverEnds = Error("SCR004",
        "A prompt without a time limit that is never answered", "answer it, or leave it to the simulated person");

    public static readonly DiagnosticCode TimeOfNothing = Error("SCR005",
        "A time for an answer that never comes", "delete  after");

    public static readonly DiagnosticCode NoAnswers = Error("SCR006",
        "A list without an answer", "write at least one answer");

    public static readonly DiagnosticCode UnknownStep = Warning("SCR010",
        "No sequence of the plant asks a person at this step", "compare with the ids in the sequence");

    public static readonly DiagnosticCode Unfit = Warning("SCR011",
        "An answer that stops the run because the step does not take it", "write an answer that fits the step's action");

    private static DiagnosticCode Error(string id, string title, string cure) => new(id, Severity.Error, title, cure);

    private static DiagnosticCode Warning(string id, string title, string cure) => new(id, Severity.Warning, title, cure);
}
