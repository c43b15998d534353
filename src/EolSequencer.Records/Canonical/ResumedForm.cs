using System.Text.Json;
using EolSequencer.Model.Events;

namespace EolSequencer.Records.Canonical;

/// <summary><see cref="Resumed"/>: <c>resumed</c> for what (safety, steps, end), <c>at</c> wall time, <c>by</c> person.</summary>
internal static class ResumedForm
{
    public static ReadOnlySpan<byte> Kind => "resumed"u8;

    public static void Write(Utf8JsonWriter json, Resumed resumed)
    {
        json.WriteString(Kind, WordOf(resumed.For));
        json.WriteString("at"u8, UtcText.Of(resumed.Wall));
        json.WriteOptional("by"u8, resumed.Person);
    }

    public static Resumed Read(Fields fields, int n, long at)
    {
        var word = fields.Text(Kind);
        return new()
        {
            N = n,
            At = at,
            For = Enum.GetValues<ResumedFor>().Where(one => WordOf(one) == word).Cast<ResumedFor?>().FirstOrDefault() ?? throw new FormatException($"a run is not resumed for '{word}'"),
            Wall = UtcText.Read(fields.Text("at"u8)),
            Person = fields.TextOrNull("by"u8),
        };
    }

    private static string WordOf(ResumedFor what) => what switch
    {
        ResumedFor.Safety => "safety",
        ResumedFor.Steps => "steps",
        ResumedFor.End => "end",
        _ => throw new ArgumentOutOfRangeException(nameof(what), what, null),
    };
}
