using System.Text.Json;
using EolSequencer.Model.Events;

namespace EolSequencer.Records.Canonical;

/// <summary><see cref="Begun"/>: <c>begun</c> step, <c>a</c> attempt (absent: 1).</summary>
internal static class BegunForm
{
    public static ReadOnlySpan<byte> Kind => "begun"u8;

    public static void Write(Utf8JsonWriter json, Begun begun)
    {
        json.WriteString(Kind, begun.Step);
        if (begun.Attempt != 1) json.WriteNumber("a"u8, begun.Attempt);
    }

    public static Begun Read(Fields fields, int n, long at) =>
        new() { N = n, At = at, Step = fields.Text(Kind), Attempt = fields.IntOr("a"u8, 1) };
}

/// <summary><see cref="NotNeeded"/>: <c>not-needed</c> step.</summary>
internal static class NotNeededForm
{
    public static ReadOnlySpan<byte> Kind => "not-needed"u8;

    public static void Write(Utf8JsonWriter json, NotNeeded notNeeded) => json.WriteString(Kind, notNeeded.Step);

    public static NotNeeded Read(Fields fields, int n, long at) => new() { N = n, At = at, Step = fields.Text(Kind) };
}

/// <summary><see cref="PassedOver"/>: <c>passed-over</c> step, <c>d</c> reason, <c>by</c> person.</summary>
internal static class PassedOverForm
{
    public static ReadOnlySpan<byte> Kind => "passed-over"u8;

    public static void Write(Utf8JsonWriter json, PassedOver passedOver)
    {
        json.WriteString(Kind, passedOver.Step);
        json.WriteString("d"u8, passedOver.Reason);
        json.WriteOptional("by"u8, passedOver.Person);
    }

    public static PassedOver Read(Fields fields, int n, long at) => new()
    {
        N = n,
        At = at,
        Step = fields.Text(Kind),
        Reason = fields.Text("d"u8),
        Person = fields.TextOrNull("by"u8),
    };
}

/// <summary><see cref="Stopped"/>: <c>stopped</c> reason, <c>s</c> step, <c>by</c> person.</summary>
internal static class StoppedForm
{
    public static ReadOnlySpan<byte> Kind => "stopped"u8;

    public static void Write(Utf8JsonWriter json, Stopped stopped)
    {
        json.WriteString(Kind, stopped.Reason);
        json.WriteOptional("s"u8, stopped.Step);
        json.WriteOptional("by"u8, stopped.Person);
    }

    public static Stopped Read(Fields fields, int n, long at) => new()
    {
        N = n,
        At = at,
        Reason = fields.Text(Kind),
        Step = fields.TextOrNull("s"u8),
        Person = fields.TextOrNull("by"u8),
    };
}
