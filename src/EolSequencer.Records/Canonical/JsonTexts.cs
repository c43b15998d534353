using System.Collections.Immutable;
using System.Text.Json;

namespace EolSequencer.Records.Canonical;

/// <summary>Fields that are left out when there is nothing to say, so that a plain step stays short.</summary>
internal static class JsonTexts
{
    public static void WriteOptional(this Utf8JsonWriter json, ReadOnlySpan<byte> key, string? text)
    {
        if (text is not null) json.WriteString(key, text);
    }

    public static void WriteFlag(this Utf8JsonWriter json, ReadOnlySpan<byte> key, bool flag)
    {
        if (flag) json.WriteBoolean(key, true);
    }

    /// <summary>Nothing for an empty list.</summary>
    public static void WriteTexts(this Utf8JsonWriter json, ReadOnlySpan<byte> key, ImmutableArray<string> texts)
    {
        if (texts.IsDefaultOrEmpty) return;
        json.WriteStartArray(key);
        foreach (var text in texts) json.WriteStringValue(text);
        json.WriteEndArray();
    }
}
