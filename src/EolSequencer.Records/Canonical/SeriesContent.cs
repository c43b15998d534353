using System.Buffers;
using System.Collections.Immutable;
using System.IO.Compression;
using System.Numerics;
using System.Security.Cryptography;
using System.Text.Json;
using EolSequencer.Model.Events;

namespace EolSequencer.Records.Canonical;

/// <summary>
/// The points of a series as bytes: a JSON list of [microseconds since the point before, value, raw bytes], what is missing
/// at the end left out. Kept compressed (Brotli, RFC 7932); the hash is that of the bytes before compression.
/// </summary>
internal sealed class SeriesContent
{
    /// <summary>The most bytes of one series: a capture of an hour at 1 kHz.</summary>
    public const int MostBytes = 256 * 1024 * 1024;

    // Small series want a quick encoder: from 2 on it clears half a megabyte of tables for each.
    private const int Quality = 1;
    private const int LeastWindowBits = 10;
    private const int MostWindowBits = 18;

    private readonly byte[] _bytes;

    private SeriesContent(byte[] bytes, int points)
    {
        _bytes = bytes;
        Reference = new SeriesReference(points, bytes.Length, Convert.ToHexStringLower(SHA256.HashData(bytes)));
    }

    public SeriesReference Reference { get; }

    public static SeriesContent Of(ImmutableArray<SeriesPoint> points)
    {
        var buffer = new ArrayBufferWriter<byte>(32 * points.Length + 16);
        using (var json = new Utf8JsonWriter(buffer, EventForm.JsonOptions))
        {
            json.WriteStartArray();
            var before = 0L;
            foreach (var point in points)
            {
                json.WriteStartArray();
                json.WriteNumberValue(point.At - before);
                if (point.Value is not null || point.Raw is not null) json.WriteStringValue(point.Value);
                if (point.Raw is not null) json.WriteStringValue(point.Raw);
                json.WriteEndArray();
                before = point.At;
            }

            json.WriteEndArray();
        }

        return new SeriesContent(buffer.WrittenSpan.ToArray(), points.Length);
    }

    public byte[] Compress()
    {
        var block = new byte[BrotliEncoder.GetMaxCompressedLength(_bytes.Length)];
        if (!BrotliEncoder.TryCompress(_bytes, block, out var length, Quality, WindowFor(_bytes.Length)))
        {
            throw new InvalidOperationException("a block of the greatest possible length was too short");
        }

        return block[..length];
    }

    // The encoder clears a window of that size each time, and most series are small.
    private static int WindowFor(int length) => Math.Clamp(BitOperations.Log2((uint)length) + 1, LeastWindowBits, MostWindowBits);

    /// <summary>The points in a block; a <see cref="FormatException"/> says how block and reference differ.</summary>
    /// <param name="withRaw">False: the raw bytes of the points are left out.</param>
    public static ImmutableArray<SeriesPoint> Read(byte[] block, SeriesReference reference, bool withRaw = true)
    {
        if (reference.Length is < 0 or > MostBytes) throw new FormatException($"a series has no {reference.Length} bytes");
        var bytes = new byte[reference.Length];
        if (!BrotliDecoder.TryDecompress(block, bytes, out var length) || length != bytes.Length)
        {
            throw new FormatException($"the block of the series does not unpack to {reference.Length} bytes");
        }

        if (Convert.ToHexStringLower(SHA256.HashData(bytes)) != reference.Hash)
        {
            throw new FormatException("the series differs from the hash in its event");
        }

        return Parse(bytes, reference.Points, withRaw);
    }

    // A day of runs has millions of points, so they are read without a document, and a text that repeats is one text.
    private static ImmutableArray<SeriesPoint> Parse(ReadOnlySpan<byte> bytes, int count, bool withRaw)
    {
        var json = new Utf8JsonReader(bytes);
        var points = ImmutableArray.CreateBuilder<SeriesPoint>(count);
        var last = new SeriesPoint(0, null, null);
        var (value, raw) = ((string?)null, (string?)null);
        Begin(ref json);
        while (json.Read() && json.TokenType == JsonTokenType.StartArray)
        {
            json.Read();
            var at = last.At + json.GetInt64();
            var (hasValue, hasRaw) = (Next(ref json), false);
            var isMissing = hasValue && json.TokenType == JsonTokenType.Null;
            if (hasValue && !isMissing) value = Text(ref json, value);
            if (hasValue && (hasRaw = Next(ref json)) && withRaw) raw = Text(ref json, raw);
            if (hasRaw && Next(ref json)) throw new FormatException("a point of the series has more than three parts");
            points.Add(last = new SeriesPoint(at, hasValue && !isMissing ? value : null, hasRaw && withRaw ? raw : null));
        }

        return points.Count == count ? points.MoveToImmutable() : throw new FormatException($"the series has {points.Count} points, its event says {count}");
    }

    private static void Begin(ref Utf8JsonReader json)
    {
        if (!json.Read() || json.TokenType != JsonTokenType.StartArray) throw new FormatException("the series is no list");
    }

    /// <summary>Moves to the next part of a point; false behind the last one.</summary>
    private static bool Next(ref Utf8JsonReader json) => json.Read() && json.TokenType != JsonTokenType.EndArray;

    private static string Text(ref Utf8JsonReader json, string? before) =>
        before is not null && json.TokenType == JsonTokenType.String && json.ValueTextEquals(before) ? before : json.GetString() ?? throw new FormatException("null stands where a text must be");
}
