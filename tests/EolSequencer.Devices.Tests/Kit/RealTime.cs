using System.Diagnostics;
using EolSequencer.Station.Time;

namespace EolSequencer.Devices.Tests.Kit;

/// <summary>Work on one thread in real time, as a run does it; everything that does not come in time is a failure.</summary>
internal static class RealTime
{
    public static void Run(Func<TimeProvider, Task> work)
    {
        var loop = new StationLoop(TimeProvider.System);
        loop.Run(async () =>
        {
            await work(loop.Time).WaitAsync(TimeSpan.FromSeconds(60), loop.Time);
            return true;
        });
    }

    /// <summary>Waits until something is so.</summary>
    public static async Task Until(Func<bool> isSo, string what)
    {
        var begun = Stopwatch.GetTimestamp();
        while (!isSo())
        {
            Assert.True(Stopwatch.GetElapsedTime(begun) < TimeSpan.FromSeconds(20), $"has not come: {what}");
            await Task.Delay(2);
        }
    }
}
