using EolSequencer.Model.Ports;
using EolSequencer.Model.Waiting;

namespace EolSequencer.Devices.VehicleBus;

/// <summary>Reads a channel again and again, one exchange at a time, and hands every reading on.</summary>
internal sealed class PollWatch : IDisposable
{
    private readonly CancellationTokenSource _end = new();

    private PollWatch() { }

    public static IDisposable Begin(IChannelReader reader, ReadRequest request, TimeSpan every, TimeProvider time, IReadingListener listener)
    {
        var watch = new PollWatch();
        _ = watch.PollAsync(reader, request, every, time, listener);
        return watch;
    }

    public void Dispose() => _end.Cancel();

    private async Task PollAsync(IChannelReader reader, ReadRequest request, TimeSpan every, TimeProvider time, IReadingListener listener)
    {
        try
        {
            await Task.Yield(); // A listener is never called from inside the call that made it.
            while (true)
            {
                var begun = time.GetTimestamp();
                var reading = await reader.ReadAsync(request, _end.Token);
                _end.Token.ThrowIfCancellationRequested();
                listener.Received(reading);
                var left = every - time.GetElapsedTime(begun);
                await Pause.ForAsync(left > TimeSpan.Zero ? left : TimeSpan.FromTicks(1), time, _end.Token);
            }
        }
        catch (OperationCanceledException) when (_end.IsCancellationRequested)
        {
            // Nobody listens any more.
        }
    }
}
