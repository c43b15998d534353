using EolSequencer.Wire.Uds;

namespace EolSequencer.Simulators.ControlUnits;

/// <summary>Session and security of one unit (ISO 14229-1).</summary>
internal sealed class SessionState(Randomness.RandomStream seeds)
{
    /// <summary>Wrong keys before the unit makes the tester wait.</summary>
    public const int MostAttempts = 3;

    /// <summary>How long it makes the tester wait.</summary>
    public static readonly TimeSpan AttemptDelay = TimeSpan.FromSeconds(10);

    private byte _awaitedLevel;
    private uint _seed;
    private int _attempts;
    private TimeSpan _lockedUntil = TimeSpan.MinValue;

    public DiagnosticSession Session { get; private set; } = DiagnosticSession.Default;

    public bool IsDefault => Session == DiagnosticSession.Default;

    /// <summary>The open security level; 0: none.</summary>
    public byte OpenLevel { get; private set; }

    /// <summary>Every change of session locks the unit again.</summary>
    public void Enter(DiagnosticSession session)
    {
        Session = session;
        OpenLevel = 0;
        _awaitedLevel = 0;
    }

    /// <summary>A seed for a level; all zeros when it is open already.</summary>
    public Reply MakeSeed(byte level, TimeSpan now)
    {
        if (now < _lockedUntil) return NegativeCode.RequiredTimeDelayNotExpired;
        if (OpenLevel == level) return SecurityAccess.MakeSeedResponse(level, [0, 0, 0, 0]);
        do _seed = (uint)seeds.Next();
        while (_seed == 0);
        _awaitedLevel = level;
        return SecurityAccess.MakeSeedResponse(level, [(byte)(_seed >> 24), (byte)(_seed >> 16), (byte)(_seed >> 8), (byte)_seed]);
    }

    /// <summary>Compares a key.</summary>
    public Reply TakeKey(byte level, ReadOnlySpan<byte> key, TimeSpan now)
    {
        if (_awaitedLevel != level) return NegativeCode.RequestSequenceError;
        if (key.Length != 4) return NegativeCode.IncorrectMessageLengthOrInvalidFormat;
        _awaitedLevel = 0;
        if (SeedKey.IsRight(_seed, level, key))
        {
            (OpenLevel, _attempts) = (level, 0);
            return SecurityAccess.MakeKeyResponse(level);
        }

        if (++_attempts < MostAttempts) return NegativeCode.InvalidKey;
        (_attempts, _lockedUntil) = (0, now + AttemptDelay);
        return NegativeCode.ExceedNumberOfAttempts;
    }
}
