using System.Text.Json;
using EolSequencer.Records.Canonical;

namespace EolSequencer.Records.Chain;

/// <summary>
/// Makes the links of one chain. An entry counts once it is accepted, so that one that could not be kept leaves the chain
/// as it was.
/// </summary>
internal sealed class ChainWriter
{
    private readonly LinkBuffer _buffer = new();
    private readonly Utf8JsonWriter _json;
    private readonly byte[] _hash = new byte[LinkBuffer.HashSize];

    public ChainWriter() => _json = new Utf8JsonWriter(_buffer, EventForm.JsonOptions);

    /// <summary>The bytes of the entry being written.</summary>
    public ReadOnlySpan<byte> Bytes => _buffer.Bytes;

    /// <summary>The link of the entry being written.</summary>
    public ReadOnlySpan<byte> Hash => _hash;

    /// <summary>The link of the last entry that was accepted; zeros when there is none.</summary>
    public ReadOnlySpan<byte> Head => _buffer.Previous;

    /// <summary>Goes on behind the entry with this link.</summary>
    public void GoOnFrom(ReadOnlySpan<byte> head) => head.CopyTo(_buffer.Previous);

    /// <summary>Begins an entry.</summary>
    public Utf8JsonWriter Begin()
    {
        _buffer.Clear();
        _json.Reset();
        return _json;
    }

    /// <summary>Ends the entry and makes its link.</summary>
    public void End()
    {
        _json.Flush();
        _buffer.Link(_hash);
    }

    /// <summary>The entry has been kept: the next one follows it.</summary>
    public void Accept() => _hash.CopyTo(_buffer.Previous);
}
