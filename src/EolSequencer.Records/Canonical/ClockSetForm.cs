using System.Text.Json;
using EolSequencer.Model.Events;

namespace EolSequencer.Records.Canonical;

/// <summary><see cref="ClockSet"/>: <c>clock-set</c> wall time that it is, <c>was</c> wall time that it would be.</summary>
internal static class ClockSetForm
{
    public static ReadOnlySpan<byte> Kind => "clock-set"u8;

    public static void Write(Utf8JsonWriter json, ClockSet set)
    {
        json.WriteString(Kind, UtcText.Of(set.After));
        json.WriteString("was"u8, UtcText.Of(set.Before));
    }

    public static ClockSet Read(Fields fields, int n, long at) =>
        new() { N = n, At = at, After = UtcText.Read(fields.Text(Kind)), Before = UtcText.Read(fields.Text("was"u8)) };
}
