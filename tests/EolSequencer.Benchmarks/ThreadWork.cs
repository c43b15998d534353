using System.Globalization;

namespace EolSequencer.Benchmarks;

/// <summary>What the processor has done for the calling thread: what a wait would be where nothing else runs.</summary>
internal static class ThreadWork
{
    private const string Account = "/proc/thread-self/schedstat";

    /// <summary>Time on a processor so far; of the whole process where the system keeps no account of threads.</summary>
    public static TimeSpan SoFar =>
        File.Exists(Account)
            ? TimeSpan.FromMicroseconds(long.Parse(File.ReadAllText(Account).Split(' ')[0], CultureInfo.InvariantCulture) / 1000.0)
            : Environment.CpuUsage.TotalTime;
}
