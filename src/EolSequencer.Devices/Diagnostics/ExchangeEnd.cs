using EolSequencer.Model.Judging;
using EolSequencer.Wire.Uds;

namespace EolSequencer.Devices.Diagnostics;

/// <summary>How one request to a control unit ended.</summary>
internal readonly record struct ExchangeEnd
{
    /// <summary>What was answered in the end, a refusal included; empty when nothing was.</summary>
    public ReadOnlyMemory<byte> Response { get; init; }

    /// <summary>Why there is no positive response; null when there is.</summary>
    public MissingCause? Missing { get; init; }

    /// <summary>The refusal's code.</summary>
    public NegativeCode Code { get; init; }

    /// <summary>When the answer was complete, or the exchange was given up.</summary>
    public long Stamp { get; init; }

    /// <summary>For people: what was sent, what came, which timer ran out; null for a positive response.</summary>
    public string? Detail { get; init; }

    public bool IsPositive => Missing is null;
}
