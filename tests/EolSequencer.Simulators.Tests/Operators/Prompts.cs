using EolSequencer.Model.Ports;
using EolSequencer.Model.Texts;

namespace EolSequencer.Simulators.Tests.Operators;

/// <summary>Prompts as the engine puts them up.</summary>
internal static class Prompts
{
    public static Prompt Of(string pattern, PromptKind kind, string? value = null, string? screen = null, string? place = "driver_seat", int attempt = 1) => new()
    {
        Number = 1,
        Step = value is null ? pattern : $"{pattern}[{value}]",
        StepPattern = pattern,
        Attempt = attempt,
        Kind = kind,
        Text = LocalText.Plain(pattern),
        Words = (_, _) => null,
        ValueOf = _ => value,
        Screen = screen,
        OperatorPlace = place,
    };
}
