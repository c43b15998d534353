using System.Runtime.InteropServices;
using Spectre.Console;

namespace EolSequencer.Cli.Commands;

/// <summary>Ctrl-C and the like: the first one ends the run and lets <c>always</c> leave the vehicle safe, the second ends the program.</summary>
internal sealed class StopSignals : IDisposable
{
    private readonly CancellationTokenSource _stop = new();
    private readonly PosixSignalRegistration[] _registrations;
    private readonly IAnsiConsole _console;

    public StopSignals(IAnsiConsole console)
    {
        _console = console;
        _registrations = [.. new[] { PosixSignal.SIGINT, PosixSignal.SIGTERM }.Select(signal => PosixSignalRegistration.Create(signal, Stop))];
    }

    /// <summary>Cancelled at the first signal, on a thread of its own.</summary>
    public CancellationToken Token => _stop.Token;

    public bool IsAsked => _stop.IsCancellationRequested;

    public void Dispose()
    {
        foreach (var registration in _registrations) registration.Dispose();
        _stop.Dispose();
    }

    private void Stop(PosixSignalContext context)
    {
        if (IsAsked) return; // Once more: the program ends as it would without us.
        context.Cancel = true;
        _console.MarkupLine("[yellow]stopping: the vehicle is left safe first; once more ends the program at once[/]");
        _stop.Cancel();
    }
}
