using System.Collections.Immutable;
using System.Runtime.InteropServices;
using System.Text.Json;
using EolSequencer.Model.Judging;

namespace EolSequencer.Records.Canonical;

/// <summary>Reads the fields of one canonical object; what is absent or of the wrong kind is a <see cref="FormatException"/>.</summary>
/// <remarks>
/// Names are one or two letters, and most fields asked for are absent. So the names are gathered once, each as one number, instead of being
/// looked for in the document each time.
/// </remarks>
internal readonly struct Fields
{
    private const int LongestPacked = 7;

    private readonly JsonElement _element;
    private readonly (ulong Name, JsonElement Value)[] _fields;

    public Fields(JsonElement element)
    {
        _element = element;
        _fields = new (ulong, JsonElement)[element.GetPropertyCount()];
        var at = 0;
        foreach (var field in element.EnumerateObject()) _fields[at++] = (Packed(JsonMarshal.GetRawUtf8PropertyName(field)), field.Value);
    }

    public Fields Object(ReadOnlySpan<byte> key) => new(Required(key));

    public JsonElement Required(ReadOnlySpan<byte> key) => Optional(key) ?? throw Missing(key);

    public JsonElement? Optional(ReadOnlySpan<byte> key)
    {
        if (key.Length > LongestPacked) return _element.TryGetProperty(key, out var found) ? found : null;
        var name = Packed(key);
        for (var at = _fields.Length - 1; at >= 0; at--)
        {
            if (_fields[at].Name == name) return _fields[at].Value;
        }

        return null;
    }

    public string Text(ReadOnlySpan<byte> key) => TextOf(Required(key));

    public string? TextOrNull(ReadOnlySpan<byte> key) => Optional(key) is { } field ? TextOf(field) : null;

    public int Int(ReadOnlySpan<byte> key) => Required(key).GetInt32();

    public int IntOr(ReadOnlySpan<byte> key, int absent) => Optional(key)?.GetInt32() ?? absent;

    public long Long(ReadOnlySpan<byte> key) => Required(key).GetInt64();

    public long LongOr(ReadOnlySpan<byte> key, long absent) => Optional(key)?.GetInt64() ?? absent;

    /// <summary>A flag is written only when it is true.</summary>
    public bool Flag(ReadOnlySpan<byte> key) => Optional(key)?.GetBoolean() ?? false;

    public Verdict Verdict(ReadOnlySpan<byte> key) => VerdictOf(Required(key));

    public Verdict VerdictOr(ReadOnlySpan<byte> key, Verdict absent) => Optional(key) is { } field ? VerdictOf(field) : absent;

    /// <summary>A list of texts; absent is empty.</summary>
    public ImmutableArray<string> Texts(ReadOnlySpan<byte> key) => List(key, TextOf);

    /// <summary>A list of anything; absent is empty.</summary>
    public ImmutableArray<T> List<T>(ReadOnlySpan<byte> key, Func<JsonElement, T> read)
    {
        if (Optional(key) is not { } list) return [];
        var items = ImmutableArray.CreateBuilder<T>(list.GetArrayLength());
        foreach (var item in list.EnumerateArray()) items.Add(read(item));
        return items.MoveToImmutable();
    }

    public static string TextOf(JsonElement field) => field.GetString() ?? throw new FormatException("null stands where a text must be");

    private static Verdict VerdictOf(JsonElement field) =>
        Verdicts.TryParse(TextOf(field), out var verdict) ? verdict : throw new FormatException($"'{field}' is no verdict");

    /// <summary>Length and bytes of a short name as one number; 0 for a long one.</summary>
    private static ulong Packed(ReadOnlySpan<byte> name)
    {
        if (name.Length > LongestPacked) return 0;
        var packed = (ulong)name.Length;
        foreach (var letter in name) packed = (packed << 8) | letter;
        return packed;
    }

    private static FormatException Missing(ReadOnlySpan<byte> key) =>
        new($"the field '{System.Text.Encoding.UTF8.GetString(key)}' is missing");
}
