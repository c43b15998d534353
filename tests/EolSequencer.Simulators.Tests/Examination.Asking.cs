using System.Globalization;
using EolSequencer.Model.Devices;
using EolSequencer.Model.Ports;
using EolSequencer.Model.Values;
using EolSequencer.Simulators.ControlUnits;
using EolSequencer.Simulators.Faults;
using EolSequencer.Simulators.Physics;
using EolSequencer.Simulators.Tests.ControlUnits;
using EolSequencer.Simulators.Tests.Operators;
using EolSequencer.Simulators.Time;
using EolSequencer.Wire.Can;

namespace EolSequencer.Simulators.Tests;

/// <summary>How the examination asks: the person, the units, the instruments; and how it notes.</summary>
internal sealed partial class Examination
{
    private void Act(IDevice device, string action)
    {
        var request = new ActionRequest(new ActionDescription { Name = action }, null, null, new Dictionary<string, Value>());
        Note($"{action}: {_time.Run(() => device.ActAsync(request, default).AsTask()).Missing}");
    }

    private void ReadAll()
    {
        foreach (var unit in _vehicle.Network.Units)
        {
            foreach (var record in unit.Type.Records)
            {
                if (record.Take is null) Ask(unit.Name, $"22{record.Identifier:X4}");
            }
        }
    }

    private void WriteGateway()
    {
        Ask("gateway", "2703");
        var seed = _testers["gateway"].Heard is [.., var last] && last.Message.StartsWith("6703", StringComparison.Ordinal) ? last.Message[4..] : "";
        Ask("gateway", "2704" + (seed.Length == 8 ? Convert.ToHexString(SeedKey.KeyOf(3, Convert.FromHexString(seed))) : "00000000"));
        Ask("gateway", "2EF190" + Convert.ToHexString(System.Text.Encoding.ASCII.GetBytes(Vans.Vin)));
        Ask("gateway", "2E2108" + Convert.ToHexString("A1B2C3D4"u8));
    }

    private void AskUnits(string request)
    {
        foreach (var unit in _vehicle.Network.Units) Ask(unit.Name, request);
    }

    private void Ask(string unit, string request)
    {
        if (_vehicle.Port.State != LinkState.Up)
        {
            Note($"{unit} {request}: no link");
            return;
        }

        _time.Run(async () =>
        {
            using var limit = new CancellationTokenSource(TimeSpan.FromMilliseconds(250), _time);
            Note($"{unit} {request}: {await _testers[unit].AskAsync(request, limit.Token)}");
        });
    }

    private void Measure(params string[] channels)
    {
        foreach (var channel in channels)
        {
            var description = new ChannelDescription { Name = channel, Shape = ValueShape.Count };
            var reading = _time.Run(() => _meter.ReadAsync(new ReadRequest(description, null, _time.GetTimestamp()), default).AsTask());
            Note($"{channel}: {reading.Value?.ToString() ?? reading.Missing.ToString()}");
        }
    }

    private async Task SampleSupply()
    {
        var voltage = new ChannelDescription { Name = "battery_voltage", Shape = ValueShape.Count };
        for (var i = 0; i < 80; i++)
        {
            await Task.Delay(TimeSpan.FromMilliseconds(40), _time);
            Note($"supply: {(await _meter.ReadAsync(new ReadRequest(voltage, null, 0), default)).Value}");
            if (i % 10 != 0 || !_testers.TryGetValue("powertrain", out var powertrain)) continue;
            using var limit = new CancellationTokenSource(TimeSpan.FromSeconds(2), _time);
            Note($"engine speed: {await powertrain.AskAsync("010C", limit.Token)}");
        }
    }

    private void Select(int position)
    {
        _vehicle.Van.Selector.Select(position);
        _time.Advance(TimeSpan.FromMilliseconds(100));
    }

    private void MeasureSound()
    {
        var start = new ActionDescription { Name = "start" };
        var level = new ChannelDescription { Name = "level", Shape = ValueShape.Count, IsEvent = true };
        var time = new Dictionary<string, Value> { ["time"] = new NumberValue(0.5m, Model.Units.UnitTable.Second) };
        _time.Run(async () =>
        {
            await _noise.ActAsync(new ActionRequest(start, null, null, time), default);
            using var limit = new CancellationTokenSource(TimeSpan.FromSeconds(2), _time);
            try
            {
                Note($"level: {(await _noise.ReadAsync(new ReadRequest(level, null, 0), limit.Token)).Value}");
            }
            catch (OperationCanceledException)
            {
                Note("level: nothing");
            }
        });
    }

    private void Prompts(params string[] patterns)
    {
        foreach (var pattern in patterns) Prompt(pattern, PromptKind.Act);
    }

    private void Prompt(string pattern, PromptKind kind, string? value = null, TimeSpan? within = null) =>
        _time.Run(() => AskAsync(pattern, kind, value, within ?? TimeSpan.FromSeconds(kind == PromptKind.Act ? 5 : 12)));

    private async Task AskAsync(string pattern, PromptKind kind, string? value, TimeSpan within)
    {
        using var limit = new CancellationTokenSource(within, _time);
        try
        {
            Note($"{pattern} {value}: {await _vehicle.Operator.AskAsync(Operators.Prompts.Of(pattern, kind, value), limit.Token)}");
        }
        catch (OperationCanceledException)
        {
            Note($"{pattern} {value}: withdrawn");
        }
    }

    private void Note(string text)
    {
        var line = string.Create(CultureInfo.InvariantCulture, $"{_time.Now.TotalMilliseconds:F1} {text}");
        if (_good is not null && (_log.Count >= _good.Count || _good[_log.Count] != line)) throw new OtherWord();
        _log.Add(line);
    }

    private sealed class OtherWord : Exception;
}
