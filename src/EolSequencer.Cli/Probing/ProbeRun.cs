using EolSequencer.Model.Judging;
using EolSequencer.Rehearsal.Simulated;
using EolSequencer.Simulators.Time;
using EolSequencer.Station.Running;
using EolSequencer.Station.Time;

namespace EolSequencer.Cli.Probing;

/// <summary>Opens the devices of a station for a session at the prompt, and closes them behind it. No data folder is touched.</summary>
/// <param name="input">Where lines come from.</param>
/// <param name="isTyped">True when a person types them; else they are shown again, so that what comes out can be read alone.</param>
internal sealed class ProbeRun(ProbeChoices choices, TextReader input, TextWriter output, bool isTyped)
{
    /// <summary>A session at a prompt is never at an end by itself, and costs nothing while it stands.</summary>
    private static readonly TimeSpan Horizon = TimeSpan.FromDays(3650);

    /// <summary>Runs to the end of the input, on the caller's thread.</summary>
    public int Run()
    {
        if (choices.IsReal)
        {
            var loop = new StationLoop(TimeProvider.System);
            return loop.Run(() => RunAsync(loop.Time, loop));
        }

        var time = new VirtualTime(TimeProvider.System.GetUtcNow());
        return time.Run(() => RunAsync(time, null), Horizon);
    }

    private async Task<int> RunAsync(TimeProvider time, StationLoop? loop)
    {
        var (station, plant, sequence, order) = choices.Vehicle;
        var screen = new ProbeScreen(output);
        var frames = new FrameLog(sequence.VehicleType.ControlUnits, time, screen);
        using var simulated = SimulatedStation.Serves(station) ? new SimulatedStation(order, time, choices.Seed, choices.Faults) { Observer = frames } : null;
        foreach (var fault in simulated?.Unsuitable ?? []) screen.Write($"this vehicle cannot have the fault {fault}; it was not put in");
        var (devices, faults) = await OpenDevices.OpenAsync(
            station, sequence, order, simulated?.Adapters ?? choices.Adapters, time, screen.Write, CancellationToken.None);
        await using (devices)
        {
            foreach (var fault in faults) screen.Write($"error: {fault}");
            if (!faults.IsEmpty) return ExitCode.Error;
            using var interrupts = new Interrupts(loop, screen.Write);
            var bench = new ProbeBench(sequence, order, devices.ByRole, time);
            screen.Write($"station {station.Id}, {order.VehicleType} {order.Vin}, {(simulated is null ? "live" : "simulated")}, {(loop is null ? "virtual" : "real")} time; nothing is recorded; 'help' lists the commands");
            var lines = new TypedLines(loop, isTyped);
            lines.ReadFrom(input);
            await new ProbeSession(bench, frames, simulated is not null, screen, lines, loop, interrupts, choices.LineLimit).RunAsync();
            return ExitCode.Pass;
        }
    }
}
