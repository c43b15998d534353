using System.Collections.Immutable;
using EolSequencer.Model.Devices;
using EolSequencer.Model.Judging;
using EolSequencer.Model.Ports;
using EolSequencer.Model.Values;

namespace EolSequencer.Engine.Tests.Kit;

/// <summary>A device whose channels are functions of time; it answers after a fixed delay in virtual time.</summary>
internal sealed class FakeDevice(string role, TimeProvider time) : IDevice
{
    private readonly long _begun = time.GetTimestamp();
    private readonly Dictionary<string, Func<TimeSpan, Value?>> _channels = [];
    private readonly Dictionary<string, MissingCause> _missing = [];

    public string Role => role;

    public string? Instrument => role == "meter" ? "M-0417" : null;

    public TimeSpan Delay { get; set; } = TimeSpan.FromMilliseconds(5);

    public bool OthersAnswer { get; set; } = true;

    public List<string> Acts { get; } = [];

    public int MostAtOnce { get; private set; }

    private int _atOnce;

    /// <summary>A channel (or <c>channel[index]</c>) and its value at a time since the device was made; null is silence.</summary>
    public FakeDevice With(string channel, Func<TimeSpan, Value?> value)
    {
        _channels[channel] = value;
        return this;
    }

    public FakeDevice Missing(string channel, MissingCause cause)
    {
        _missing[channel] = cause;
        return this;
    }

    public ValueTask<Reading> IdentifyAsync(CancellationToken cancel) => new(Reading.Of(new TextValue(role), time.GetTimestamp()));

    public async ValueTask<Reading> ReadAsync(ReadRequest request, CancellationToken cancel)
    {
        MostAtOnce = Math.Max(MostAtOnce, ++_atOnce);
        try
        {
            await Task.Delay(Delay, time, cancel);
            return Now(Key(request.Channel.Name, request.Index));
        }
        finally
        {
            _atOnce--;
        }
    }

    public async ValueTask<IReadOnlyList<Reading>> ReadEachAsync(ReadRequest request, IReadOnlyList<string> indexes, CancellationToken cancel)
    {
        await Task.Delay(Delay, time, cancel);
        return [.. indexes.Select(index => Now(Key(request.Channel.Name, index)))];
    }

    public IDisposable Watch(ReadRequest request, TimeSpan every, IReadingListener listener) =>
        time.CreateTimer(_ => listener.Received(Now(Key(request.Channel.Name, request.Index))), null, TimeSpan.Zero, every);

    public async ValueTask<Reading> ActAsync(ActionRequest request, CancellationToken cancel)
    {
        await Task.Delay(Delay, time, cancel);
        Acts.Add($"{Key(request.Action.Name, request.Index)}={request.To}");
        return _missing.TryGetValue(request.Action.Name, out var cause)
            ? Reading.None(cause, time.GetTimestamp(), $"{request.Action.Name}: {cause.Word()}")
            : Reading.Confirmed(time.GetTimestamp());
    }

    public ValueTask<bool> OthersAnswerAsync(ReadRequest request, long since, CancellationToken cancel) => new(OthersAnswer);

    public ValueTask DisposeAsync() => default;

    private static string Key(string channel, string? index) => index is null ? channel : $"{channel}[{index}]";

    private Reading Now(string key)
    {
        var stamp = time.GetTimestamp();
        if (_missing.TryGetValue(key, out var cause)) return Reading.None(cause, stamp, $"{key}: {cause.Word()}");
        return _channels[key](time.GetElapsedTime(_begun, stamp)) is { } value
            ? Reading.Of(value, stamp, new byte[] { 0x62 })
            : Reading.None(MissingCause.Silent, stamp, $"{key}: silent");
    }
}
