using EolSequencer.Model.Ports;
using EolSequencer.Model.Values;

namespace EolSequencer.SamplePlugin;

/// <summary>One more at each read.</summary>
internal sealed class Counter(string role, long from, TimeProvider time) : IDevice
{
    private long _counted;

    public string Role => role;

    public string? Instrument => null;

    public ValueTask<Reading> IdentifyAsync(CancellationToken cancel) => new(Reading.Of(new TextValue("sample counter"), time.GetTimestamp()));

    public ValueTask<Reading> ReadAsync(ReadRequest request, CancellationToken cancel) => new(Reading.Of(new NumberValue(from + _counted++, null), time.GetTimestamp()));

    public async ValueTask<IReadOnlyList<Reading>> ReadEachAsync(ReadRequest request, IReadOnlyList<string> indexes, CancellationToken cancel)
    {
        var readings = new List<Reading>();
        foreach (var index in indexes) readings.Add(await ReadAsync(request with { Index = index }, cancel));
        return readings;
    }

    public IDisposable Watch(ReadRequest request, TimeSpan every, IReadingListener listener) =>
        time.CreateTimer(_ => listener.Received(Reading.Of(new NumberValue(from + _counted++, null), time.GetTimestamp())), null, every, every);

    public ValueTask<Reading> ActAsync(ActionRequest request, CancellationToken cancel)
    {
        _counted = 0;
        return new(Reading.Confirmed(time.GetTimestamp()));
    }

    public ValueTask<bool> OthersAnswerAsync(ReadRequest request, long since, CancellationToken cancel) => new(false);

    public ValueTask DisposeAsync() => default;
}
