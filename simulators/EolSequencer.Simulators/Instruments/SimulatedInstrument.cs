using EolSequencer.Model.Judging;
using EolSequencer.Model.Ports;
using EolSequencer.Model.Values;

namespace EolSequencer.Simulators.Instruments;

/// <summary>What all simulated instruments share: a role, one measurement at a time, polling.</summary>
internal abstract class SimulatedInstrument(string role, string? instrument, TimeProvider time) : IDevice
{
    /// <inheritdoc/>
    public string Role { get; } = role;

    /// <inheritdoc/>
    public string? Instrument { get; } = instrument;

    protected TimeProvider Time { get; } = time;

    /// <inheritdoc/>
    public abstract ValueTask<Reading> IdentifyAsync(CancellationToken cancel);

    /// <inheritdoc/>
    public abstract ValueTask<Reading> ReadAsync(ReadRequest request, CancellationToken cancel);

    /// <inheritdoc/>
    public abstract ValueTask<Reading> ActAsync(ActionRequest request, CancellationToken cancel);

    /// <inheritdoc/>
    public async ValueTask<IReadOnlyList<Reading>> ReadEachAsync(ReadRequest request, IReadOnlyList<string> indexes, CancellationToken cancel)
    {
        var readings = new Reading[indexes.Count];
        for (var i = 0; i < readings.Length; i++) readings[i] = await ReadAsync(request with { Index = indexes[i] }, cancel);
        return readings;
    }

    /// <inheritdoc/>
    public IDisposable Watch(ReadRequest request, TimeSpan every, IReadingListener listener) => new Poll(this, request, every, listener);

    /// <summary>An instrument has a line of its own: nobody else is on it.</summary>
    public ValueTask<bool> OthersAnswerAsync(ReadRequest request, long since, CancellationToken cancel) => new(false);

    /// <inheritdoc/>
    public ValueTask DisposeAsync() => ValueTask.CompletedTask;

    protected Reading Named(string what) => Reading.Of(new TextValue(Instrument is null ? what : $"{what} {Instrument}"), Time.GetTimestamp());

    protected Reading Refuse(string what) => Reading.None(MissingCause.Refused, Time.GetTimestamp(), $"{Role} has no '{what}'");

    /// <summary>A measured number at the resolution of the instrument.</summary>
    protected Reading Measured(double value, Model.Units.Unit unit, int decimals) =>
        Reading.Of(new NumberValue((decimal)Math.Round(value, decimals), unit, Inexact: true), Time.GetTimestamp());

    private sealed class Poll : IDisposable
    {
        private readonly CancellationTokenSource _end = new();
        private readonly ITimer _timer;
        private bool _isReading;

        public Poll(SimulatedInstrument device, ReadRequest request, TimeSpan every, IReadingListener listener) =>
            _timer = device.Time.CreateTimer(_ => _ = ReadAsync(device, request, listener), null, TimeSpan.Zero, every);

        public void Dispose()
        {
            if (_end.IsCancellationRequested) return;
            _timer.Dispose();
            _end.Cancel();
        }

        private async Task ReadAsync(SimulatedInstrument device, ReadRequest request, IReadingListener listener)
        {
            if (_isReading) return;
            _isReading = true;
            try
            {
                var reading = await device.ReadAsync(request, _end.Token);
                if (!_end.IsCancellationRequested) listener.Received(reading);
            }
            catch (OperationCanceledException)
            {
                // Nobody listens any more.
            }
            finally
            {
                _isReading = false;
            }
        }
    }
}
