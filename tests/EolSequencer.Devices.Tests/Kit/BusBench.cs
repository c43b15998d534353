using System.Collections.Immutable;
using EolSequencer.Devices.Diagnostics;
using EolSequencer.Devices.VehicleBus;
using EolSequencer.Model.Devices;
using EolSequencer.Model.Ports;
using EolSequencer.Model.Values;
using EolSequencer.Model.Vehicles;
using EolSequencer.Simulators.Time;
using EolSequencer.Wire.IsoTp;

namespace EolSequencer.Devices.Tests.Kit;

/// <summary>A vehicle bus device over written-down frames, in virtual time: gateway, brakes and two emissions units.</summary>
internal sealed class BusBench
{
    private static readonly ControlUnit[] Units =
    [
        new("gateway", 0x710, 0x718, null, null),
        new("brakes", 0x713, 0x71B, null, null),
        new("powertrain", 0x7E0, 0x7E8, null, null),
        new("transmission", 0x7E1, 0x7E9, null, null),
    ];

    public BusBench(IReadOnlyList<ControlUnit>? fitted = null, IKeyAlgorithm? keys = null, DiagnosticTiming? timing = null, TransportOptions? transport = null)
    {
        Bus = new ScriptedBus(Time);
        Device = new VehicleBusDevice("bus", Bus, Time, fitted ?? Units, keys, timing, transport, Notes.Add);
    }

    public VirtualTime Time { get; } = new(DateTimeOffset.UnixEpoch);

    public ScriptedBus Bus { get; }

    public VehicleBusDevice Device { get; }

    /// <summary>What the device told whoever looks after the station.</summary>
    public List<string> Notes { get; } = [];

    public double NowMs => Time.Now.TotalMilliseconds;

    public Reading Read(ChannelDescription channel, string? index = null, double withinMs = 20_000) =>
        Within(withinMs, cancel => Device.ReadAsync(Request(channel, index), cancel));

    public IReadOnlyList<Reading> ReadEach(ChannelDescription channel, params string[] indexes) =>
        Within(20_000, cancel => Device.ReadEachAsync(Request(channel, null), indexes, cancel));

    public Reading Act(ActionDescription action, Value? to = null, string? index = null, double withinMs = 20_000) =>
        Within(withinMs, cancel => Device.ActAsync(new ActionRequest(action, index, to, ImmutableDictionary<string, Value>.Empty), cancel));

    public bool OthersAnswer(ChannelDescription channel, long since) =>
        Within(20_000, cancel => Device.OthersAnswerAsync(Request(channel, null), since, cancel));

    public ReadRequest Request(ChannelDescription channel, string? index) => new(channel, index, Time.GetTimestamp());

    public WatchLog Watch(ChannelDescription channel, double everyMs = 100, string? index = null, bool everyArrival = false)
    {
        var log = new WatchLog(Time);
        Time.Run(() =>
        {
            log.Subscription = Device.Watch(Request(channel, index) with { EveryArrival = everyArrival }, TimeSpan.FromMilliseconds(everyMs), log);
            return Task.CompletedTask;
        });
        return log;
    }

    public void Pass(double ms) => Time.Advance(TimeSpan.FromMilliseconds(ms));

    private T Within<T>(double ms, Func<CancellationToken, ValueTask<T>> work) => Time.Run(async () =>
    {
        using var limit = new CancellationTokenSource(TimeSpan.FromMilliseconds(ms), Time);
        return await work(limit.Token);
    });
}
