using EolSequencer.Simulators.Bus;
using EolSequencer.Wire.Can;
using EolSequencer.Wire.SerialCan;

namespace EolSequencer.Simulators.Outside;

/// <summary>
/// A CAN interface on the bus of a simulated vehicle that speaks ASCII, as the serial-line CAN driver of Linux documents it. It
/// begins closed, confirms each frame once it has gone out, and refuses what it cannot do with a bell.
/// </summary>
public sealed class SerialCanInterface : ICanListener, IFrameOwner, IDisposable
{
    /// <summary>The most frames that wait for the bus; one more is refused.</summary>
    public const int QueueLength = 10;

    private static readonly byte[] Done = [SerialCanText.CarriageReturn];
    private static readonly byte[] Refused = [SerialCanText.Bell];

    private readonly SimulatedVehicle _vehicle;
    private readonly Action<byte[]> _write;
    private readonly SerialCanReader _reader = new();
    private IDisposable? _listening;
    private int _waiting;
    private int? _rate;
    private int _opening;

    /// <param name="vehicle">Whose bus it is plugged into, at the tester's plug.</param>
    /// <param name="write">Takes what it writes on its serial line.</param>
    public SerialCanInterface(SimulatedVehicle vehicle, Action<byte[]> write)
    {
        (_vehicle, _write) = (vehicle, write);
        vehicle.Tester.LinkChanged += Changed;
    }

    /// <summary>Whether somebody has opened it.</summary>
    public bool IsOpen => _listening is not null;

    /// <summary>Takes bytes of its serial line, in any portions, on the simulator's thread.</summary>
    public void Take(ReadOnlySpan<byte> bytes)
    {
        foreach (var one in bytes)
        {
            if (_reader.Take(one, out var line)) Obey(line);
        }
    }

    /// <inheritdoc/>
    public void Received(in CanFrame frame, long stamp)
    {
        if (!frame.IsFd) _write(SerialCanText.Write(frame));
    }

    /// <inheritdoc/>
    public void Silenced(CanId id, long lastStamp)
    {
        // Every arrival is handed on.
    }

    /// <inheritdoc/>
    public void Dispose()
    {
        _vehicle.Tester.LinkChanged -= Changed;
        _listening?.Dispose();
        _listening = null;
    }

    void IFrameOwner.Sent(int what)
    {
        // What an opening before has handed over is confirmed to nobody.
        if (what >> 1 != _opening) return;
        _waiting--;
        _write((what & 1) == 1 ? "Z\r"u8.ToArray() : "z\r"u8.ToArray());
    }

    private void Obey(in SerialCanLine line)
    {
        switch (line.Kind)
        {
            case SerialCanKind.Done:
                _write(Done);
                break;
            case SerialCanKind.Frame when IsOpen && _waiting < QueueLength:
                Send(line.Frame);
                break;
            case SerialCanKind.Other:
                Command(line.Text!);
                break;
            default:
                _write(Refused);
                break;
        }
    }

    private void Send(in CanFrame frame)
    {
        if (_rate != SimulatedVehicle.BitRate) return; // Nobody on the bus understands it, so it never goes out.
        _waiting++;
        _vehicle.Tester.Send(frame, this, (_opening << 1) | (frame.IsExtended ? 1 : 0));
    }

    private void Command(string text)
    {
        switch (text)
        {
            case ['S', >= '0' and <= '8'] when !IsOpen:
                _rate = SerialCanText.Rates[text[1] - '0'];
                _write(Done);
                break;
            case "O" when !IsOpen && _rate is not null:
                Open();
                break;
            case "C" when IsOpen:
                Close();
                break;
            case "V":
                _write("V0100\r"u8.ToArray());
                break;
            default:
                _write(Refused);
                break;
        }
    }

    private void Open()
    {
        _opening++;
        _waiting = 0;
        _listening = _rate == SimulatedVehicle.BitRate ? _vehicle.ListenToAll(this) : Nothing.Instance;
        _write(Done);
        if (_vehicle.Tester.State == LinkState.BusOff) Changed(new LinkChange(LinkState.BusOff, 0));
    }

    private void Close()
    {
        _listening!.Dispose();
        _listening = null;
        _vehicle.Tester.Withdraw(this);
        _write(Done);
    }

    private void Changed(LinkChange change)
    {
        if (!IsOpen) return;
        _waiting = 0;
        if (change.State == LinkState.BusOff) _write("sb000256\r"u8.ToArray());
        else if (change.State == LinkState.Up) _write("sa000000\r"u8.ToArray());
    }

    private sealed class Nothing : IDisposable
    {
        public static Nothing Instance { get; } = new();

        public void Dispose()
        {
        }
    }
}
