using EolSequencer.Model.Judging;
using EolSequencer.Model.Ports;
using EolSequencer.Simulators.Time;

namespace EolSequencer.Devices.Tests.Kit;

/// <summary>Notes what a watch hands on: "12.5: yes", "60: silent".</summary>
internal sealed class WatchLog(VirtualTime time) : IReadingListener
{
    public IDisposable? Subscription { get; set; }

    public List<Reading> Readings { get; } = [];

    public List<string> Lines { get; } = [];

    public void Received(in Reading reading)
    {
        // During the call that makes the watch there is no subscription yet, and nothing may come.
        Assert.NotNull(Subscription);
        Readings.Add(reading);
        Lines.Add(FormattableString.Invariant($"{time.Now.TotalMilliseconds:0.##}: {reading.Value?.ToString() ?? reading.Missing!.Value.Word()}"));
    }
}
