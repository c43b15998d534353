using System.Runtime.InteropServices;
using EolSequencer.Station.Time;

namespace EolSequencer.Cli.Probing;

/// <summary>Ctrl-C: the first one ends what is going on and leaves the session, the second in a row ends the program.</summary>
internal sealed class Interrupts : IDisposable
{
    private readonly StationLoop? _loop;
    private readonly Action<string> _tell;
    private readonly PosixSignalRegistration _registration;
    private readonly Lock _turn = new();
    private ProbeTurn? _current;
    private bool _isAsked;

    /// <param name="loop">The loop of a session in real time; null in virtual time.</param>
    public Interrupts(StationLoop? loop, Action<string> tell)
    {
        (_loop, _tell) = (loop, tell);
        _registration = PosixSignalRegistration.Create(PosixSignal.SIGINT, context => context.Cancel = Ask());
    }

    /// <summary>A command begins.</summary>
    public ProbeTurn Begin()
    {
        lock (_turn)
        {
            _isAsked = false;
            return _current = new ProbeTurn();
        }
    }

    /// <summary>It has ended.</summary>
    public void End()
    {
        lock (_turn)
        {
            _current?.Dispose();
            _current = null;
        }
    }

    /// <summary>A Ctrl-C, from any thread.</summary>
    /// <returns>False: it was the second in a row, the program ends.</returns>
    public bool Ask()
    {
        lock (_turn)
        {
            if (_isAsked) return false;
            _isAsked = true;
            _tell("Ctrl-C: once more ends the program");
            _current?.Ask();
            _loop?.Post(Stop);
            return true;
        }
    }

    public void Dispose() => _registration.Dispose();

    private void Stop()
    {
        lock (_turn) _current?.Stop();
    }
}
