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
    public static ImmutableArray<SeriesPoint> Read(byte[] block, SeriesReference reference)
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

        return Parse(bytes, reference.Points);
    }

    private static ImmutableArray<SeriesPoint> Parse(byte[] bytes, int count)
    {
        using var document = JsonDocument.Parse(bytes);
        var points = ImmutableArray.CreateBuilder<SeriesPoint>(count);
        var at = 0L;
        foreach (var item in document.RootElement.EnumerateArray())
        {
            var parts = item.GetArrayLength();
            at += item[0].GetInt64();
            points.Add(new SeriesPoint(at, parts > 1 ? item[1].GetString() : null, parts > 2 ? Fields.TextOf(item[2]) : null));
        }

        return points.Count == count ? points.MoveToImmutable() : throw new FormatException($"the series has {points.Count} points, its event says {count}");
    }
}
