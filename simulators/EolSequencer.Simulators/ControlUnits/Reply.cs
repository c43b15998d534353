using EolSequencer.Wire.Uds;

namespace EolSequencer.Simulators.ControlUnits;

/// <summary>What a service answers: a message, a refusal, or nothing at all.</summary>
internal readonly record struct Reply
{
    /// <summary>The positive response; null: refused, or silence.</summary>
    public byte[]? Message { get; private init; }

    public NegativeCode Refusal { get; private init; }

    /// <summary>The unit restarts once the response is out.</summary>
    public bool ThenRestarts { get; private init; }

    public static Reply Silence => default;

    public static implicit operator Reply(byte[] message) => new() { Message = message };

    public static implicit operator Reply(NegativeCode refusal) => new() { Refusal = refusal };

    public static Reply BeforeRestart(byte[] message) => new() { Message = message, ThenRestarts = true };
}
