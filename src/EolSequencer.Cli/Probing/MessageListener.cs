using System.Collections.Immutable;
using EolSequencer.Model.Vehicles;
using EolSequencer.Wire.Can;
using EolSequencer.Wire.Uds;

namespace EolSequencer.Cli.Probing;

/// <summary>
/// Puts the diagnostic messages together that go over the bus, by listening alone. Whoever sends and receives keeps the rules;
/// here a message that is not whole is dropped.
/// </summary>
/// <remarks>Source: ISO 15765-2:2016, 9.6: the high half of the first byte says what a frame is. Normal addressing.</remarks>
internal sealed class MessageListener
{
    /// <summary>Requests to all units (ISO 15765-4).</summary>
    private const uint AllUnits = 0x7DF;

    private const int Single = 0;
    private const int First = 1;
    private const int Consecutive = 2;

    private readonly Dictionary<uint, string> _names = [];
    private readonly Dictionary<uint, (int Length, List<byte> Bytes)> _begun = [];

    public MessageListener(ImmutableArray<ControlUnit> units)
    {
        _names[AllUnits] = "all units <-";
        foreach (var unit in units) (_names[unit.Request], _names[unit.Response]) = ($"{unit.Name} <-", $"{unit.Name} ->");
    }

    /// <summary>The message that a frame completes, in words; null when it completes none.</summary>
    public string? Heard(in CanFrame frame)
    {
        if (frame.Data.IsEmpty || !_names.TryGetValue(frame.Id.Value, out var who)) return null;
        return Message(frame.Id.Value, frame.Data.Span) is { Length: > 0 } message ? $"{who} {HexText.Of(message)}{Meaning(message)}" : null;
    }

    private byte[]? Message(uint id, ReadOnlySpan<byte> data)
    {
        switch (data[0] >> 4)
        {
            case Single:
                var header = data[0] == 0 && data.Length > CanFrame.ClassicalMax ? 2 : 1;
                var length = header == 2 ? data[1] : data[0] & 0xF;
                return header + length <= data.Length ? data.Slice(header, length).ToArray() : null;
            case First when data.Length >= CanFrame.ClassicalMax:
                _begun[id] = (((data[0] & 0xF) << 8) | data[1], [.. data[2..]]);
                return null;
            case Consecutive when _begun.TryGetValue(id, out var begun):
                begun.Bytes.AddRange(data[1..]);
                if (begun.Bytes.Count < begun.Length) return null;
                _begun.Remove(id);
                return [.. begun.Bytes.Take(begun.Length)];
            default:
                return null;
        }
    }

    private static string Meaning(ReadOnlySpan<byte> message) =>
        message is [0x7F, var service, var code, ..] ? $"   {Enum.GetName((ServiceId)service) ?? $"service {service:X2}"} refused: {NegativeResponse.Describe((NegativeCode)code)}"
        : Enum.GetName((ServiceId)message[0]) is { } asked ? $"   {asked}"
        : Enum.GetName((ServiceId)(message[0] - 0x40)) is { } answered ? $"   {answered}, answer"
        : "";
}
