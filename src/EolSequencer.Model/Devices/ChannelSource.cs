using System.Collections.Immutable;

namespace EolSequencer.Model.Devices;

/// <summary>How the vehicle bus obtains a channel.</summary>
public abstract record ChannelSource
{
    private ChannelSource() { }

    /// <summary>ReadDataByIdentifier (ISO 14229-1, service 22).</summary>
    /// <param name="Ecu">The control unit; null: the one the index names.</param>
    /// <param name="Identifier">0 to 0xFFFF.</param>
    /// <param name="Bits">Which bits of the record are the value, by index; the key is empty for a channel without index. Empty: the value is the record's beginning.</param>
    public sealed record Data(string? Ecu, int Identifier, ImmutableDictionary<string, BitRange> Bits, RawForm Form) : ChannelSource;

    /// <summary>The status record of a routine: RoutineControl, request results (service 31 03).</summary>
    /// <param name="Ecu">The control unit; null: the one the index names.</param>
    /// <param name="Bits">As for <see cref="Data"/>, counted from the first byte behind the routine's identifier.</param>
    public sealed record RoutineResult(string? Ecu, int Identifier, ImmutableDictionary<string, BitRange> Bits, RawForm Form) : ChannelSource;

    /// <summary>A parameter of service 01 (SAE J1979), asked functionally; its formula and unit are the standard's.</summary>
    public sealed record Obd(int Parameter) : ChannelSource;

    /// <summary>A signal in a cyclic frame.</summary>
    /// <param name="FrameId">11-bit or, above 0x7FF, 29-bit identifier.</param>
    /// <param name="Bits">First bit and number of bits by index; the key is empty for a channel without index.</param>
    public sealed record Broadcast(uint FrameId, ImmutableDictionary<string, BitRange> Bits, RawForm Form, TimeSpan Cycle) : ChannelSource;

    /// <summary>A list or state that a whole service gives.</summary>
    /// <param name="Ecu">The control unit; null: the one the index names, or all fitted ones for a channel without index.</param>
    /// <param name="Mask">Status bits asked for (ISO 14229-1 D.2), 0 when the service has none.</param>
    public sealed record Service(string? Ecu, ServiceRead Kind, byte Mask) : ChannelSource;
}

/// <summary>Bits of a frame or record, numbered as in CAN databases: bit b lies in byte b div 8, b mod 8 = 0 being its least significant.</summary>
public sealed record BitRange(int First, int Count);

/// <summary>What can be asked of a control unit as a whole.</summary>
public enum ServiceRead
{
    /// <summary>Codes by status mask, as a list of texts: <c>P0420</c>, from several units <c>brakes:C0035</c>.</summary>
    StoredTroubleCodes,
    /// <summary>Whether the unit answers at all (TesterPresent).</summary>
    Presence,
}
