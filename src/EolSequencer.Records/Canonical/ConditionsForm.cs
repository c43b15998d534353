using System.Collections.Immutable;
using System.Text;
using System.Text.Json;
using EolSequencer.Model.Events;
using EolSequencer.Model.Judging;

namespace EolSequencer.Records.Canonical;

/// <summary>
/// <see cref="ConditionsRead"/>: <c>conditions</c>, a list of <c>c</c> name, <c>v</c> value, <c>u</c> unit, <c>y</c> why it is missing,
/// <c>i</c> instrument. The table <c>run</c> holds the same list.
/// </summary>
internal static class ConditionsForm
{
    public static ReadOnlySpan<byte> Kind => "conditions"u8;

    public static void Write(Utf8JsonWriter json, ConditionsRead read)
    {
        json.WritePropertyName(Kind);
        WriteList(json, read.Conditions);
    }

    public static ConditionsRead Read(Fields fields, int n, long at) => new() { N = n, At = at, Conditions = fields.List(Kind, ReadOne) };

    /// <summary>The list as text.</summary>
    public static string TextOf(ImmutableArray<Condition> conditions)
    {
        using var bytes = new MemoryStream();
        using (var json = new Utf8JsonWriter(bytes, EventForm.JsonOptions)) WriteList(json, conditions);
        return Encoding.UTF8.GetString(bytes.GetBuffer(), 0, (int)bytes.Length);
    }

    /// <summary>The list of a text; a <see cref="FormatException"/> when it is none.</summary>
    public static ImmutableArray<Condition> ListOf(string text)
    {
        try
        {
            using var document = JsonDocument.Parse(text);
            return [.. document.RootElement.EnumerateArray().Select(ReadOne)];
        }
        catch (Exception fault) when (fault is JsonException or InvalidOperationException)
        {
            throw new FormatException(fault.Message, fault);
        }
    }

    private static void WriteList(Utf8JsonWriter json, ImmutableArray<Condition> conditions)
    {
        json.WriteStartArray();
        foreach (var one in conditions)
        {
            json.WriteStartObject();
            json.WriteString("c"u8, one.Name);
            json.WriteOptional("v"u8, one.Value);
            json.WriteOptional("u"u8, one.Unit);
            json.WriteOptional("y"u8, one.Missing?.Word());
            json.WriteOptional("i"u8, one.Instrument);
            json.WriteEndObject();
        }

        json.WriteEndArray();
    }

    private static Condition ReadOne(JsonElement item)
    {
        var fields = new Fields(item);
        MissingCause? missing = fields.TextOrNull("y"u8) is not { } word ? null
            : MissingCauses.TryParse(word, out var cause) ? cause : throw new FormatException($"'{word}' is no cause of a missing reading");
        return new Condition(fields.Text("c"u8), fields.TextOrNull("v"u8), fields.TextOrNull("u"u8), missing, fields.TextOrNull("i"u8));
    }
}
