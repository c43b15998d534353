using System.Text.Json;
using EolSequencer.Model.Events;
using EolSequencer.Model.Ports;

namespace EolSequencer.Records.Canonical;

/// <summary><see cref="Asked"/>: <c>asked</c> step, <c>a</c> attempt (absent: 1), <c>p</c> number of the prompt, <c>f</c> what kind of answer it wants.</summary>
internal static class AskedForm
{
    public static ReadOnlySpan<byte> Kind => "asked"u8;

    public static void Write(Utf8JsonWriter json, Asked asked)
    {
        json.WriteString(Kind, asked.Step);
        if (asked.Attempt != 1) json.WriteNumber("a"u8, asked.Attempt);
        json.WriteNumber("p"u8, asked.Prompt);
        json.WriteString("f"u8, WordOf(asked.Kind));
    }

    public static Asked Read(Fields fields, int n, long at) => new()
    {
        N = n,
        At = at,
        Step = fields.Text(Kind),
        Attempt = fields.IntOr("a"u8, 1),
        Prompt = fields.Int("p"u8),
        Kind = KindOf(fields.Text("f"u8)),
    };

    private static string WordOf(PromptKind kind) => kind switch
    {
        PromptKind.Act => "act",
        PromptKind.Confirm => "confirm",
        PromptKind.Judge => "judge",
        PromptKind.Enter => "enter",
        PromptKind.Scan => "scan",
        PromptKind.Choose => "choose",
        PromptKind.Caution => "caution",
        PromptKind.Decide => "decide",
        _ => throw new ArgumentOutOfRangeException(nameof(kind), kind, "there are eight kinds of prompt"),
    };

    private static PromptKind KindOf(string word)
    {
        foreach (var kind in Enum.GetValues<PromptKind>())
        {
            if (WordOf(kind) == word) return kind;
        }

        throw new FormatException($"'{word}' is no kind of prompt");
    }
}

/// <summary><see cref="Answered"/>: <c>answered</c> step, <c>p</c> number of the prompt, <c>v</c> answer, <c>d</c> detail, <c>by</c> person.</summary>
internal static class AnsweredForm
{
    public static ReadOnlySpan<byte> Kind => "answered"u8;

    public static void Write(Utf8JsonWriter json, Answered answered)
    {
        json.WriteString(Kind, answered.Step);
        json.WriteNumber("p"u8, answered.Prompt);
        json.WriteString("v"u8, answered.Answer);
        json.WriteOptional("d"u8, answered.Detail);
        json.WriteOptional("by"u8, answered.Person);
    }

    public static Answered Read(Fields fields, int n, long at) => new()
    {
        N = n,
        At = at,
        Step = fields.Text(Kind),
        Prompt = fields.Int("p"u8),
        Answer = fields.Text("v"u8),
        Detail = fields.TextOrNull("d"u8),
        Person = fields.TextOrNull("by"u8),
    };
}

/// <summary><see cref="AnswerRefused"/>: <c>answer-refused</c> step, <c>p</c> number of the prompt, <c>v</c> answer, <c>d</c> why it does not fit.</summary>
internal static class AnswerRefusedForm
{
    public static ReadOnlySpan<byte> Kind => "answer-refused"u8;

    public static void Write(Utf8JsonWriter json, AnswerRefused refused)
    {
        json.WriteString(Kind, refused.Step);
        json.WriteNumber("p"u8, refused.Prompt);
        json.WriteString("v"u8, refused.Answer);
        json.WriteString("d"u8, refused.Reason);
    }

    public static AnswerRefused Read(Fields fields, int n, long at) => new()
    {
        N = n,
        At = at,
        Step = fields.Text(Kind),
        Prompt = fields.Int("p"u8),
        Answer = fields.Text("v"u8),
        Reason = fields.Text("d"u8),
    };
}
