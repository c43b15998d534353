using EolSequencer.Model.Ports;
using EolSequencer.Model.Waiting;

namespace EolSequencer.Devices.VehicleBus;

/// <summary>
/// Reads a channel again and again, one exchange at a time, in steps of a fixed interval counted from the beginning;
/// an exchange that takes longer leaves steps out. Hands on every value, and a missing one when its cause is new.
/// </summary>
internal sealed class PollWatch : IDisposable
{
    private readonly CancellationTokenSource _end = new();

    private PollWatch() { }

    public static IDisposable Begin(IChannelReader reader, ReadRequest request, TimeSpan every, TimeProvider time, IReadingListener listener)
    {
        var watch = new PollWatch();
        watch.Poll(reader, request, every, time, listener);
        return watch;
    }

    public void Dispose() => _end.Cancel();

    // Nobody awaits a watch; "async void" lets a broken assumption reach the run's thread all the same.
    private async void Poll(IChannelReader reader, ReadRequest request, TimeSpan every, TimeProvider time, IReadingListener listener)
    {
        try
        {
            await Task.Yield(); // A listener is never called from inside the call that made it.
            var begun = time.GetTimestamp();
            Reading? last = null;
            TimeSpan rest;
            do
            {
                var reading = await reader.ReadAsync(request, _end.Token);
                _end.Token.ThrowIfCancellationRequested();
                if (reading.Missing is null || reading.Missing != last?.Missing) listener.Received(reading);
                last = reading;
                var passed = time.GetElapsedTime(begun);
                rest = TimeSpan.FromTicks(every.Ticks - (passed.Ticks % every.Ticks));
            }
            while (await Pause.TryForAsync(rest, time, _end.Token));
        }
        catch (OperationCanceledException) when (_end.IsCancellationRequested)
        {
            // Nobody listens any more.
        }
    }
}
