namespace EolSequencer.Simulators.Physics;

/// <summary>The small unrest of a real signal: the same at the same moment, however often one looks.</summary>
internal static class Jitter
{
    /// <summary>A number between -1 and 1 that changes every step.</summary>
    /// <param name="now">The moment.</param>
    /// <param name="step">How long it stays the same.</param>
    /// <param name="salt">Keeps signals apart.</param>
    public static double At(TimeSpan now, TimeSpan step, uint salt)
    {
        var bits = ((ulong)(now.Ticks / step.Ticks) + 1) * 0x9E3779B97F4A7C15 ^ (salt * 0xD1B54A32D192ED03UL);
        bits = (bits ^ (bits >> 32)) * 0xD6E8FEB86659FD93;
        return ((bits >> 12) * (2.0 / (1UL << 52))) - 1;
    }
}
