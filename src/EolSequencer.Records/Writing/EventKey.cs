namespace EolSequencer.Records.Writing;

/// <summary>Row number of a run and number of an event in it, as one key: what a run wrote lies together.</summary>
internal static class EventKey
{
    /// <summary>The most events one run can have.</summary>
    public const int MostEvents = (1 << Bits) - 1;

    private const int Bits = 20;

    public static long Of(long run, int n) => (run << Bits) | (long)n;

    /// <summary>The key before the run's first event.</summary>
    public static long Before(long run) => run << Bits;

    /// <summary>The greatest key the run can have.</summary>
    public static long Last(long run) => Of(run, MostEvents);

    public static int NumberOf(long key) => (int)(key & MostEvents);
}
